import type { Band, CalibrationOutcome } from '../../assess/certainty.js';
import { displaySystems } from '../../quantity/display-units.js';
import { displayUnitOf } from '../../quantity/format.js';
import { findUnits } from '../../quantity/unit-table.js';
import type { ReportContext } from '../context.js';
import type { Block, TableRow } from '../document.js';
import { banded } from '../words/bands.js';
import { capitalised, none, number } from '../words/figures.js';
import { fieldWords } from '../words/outcome-words.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

/** What was believed before the measurements, what was measured, what is believed after; nothing without them. */
export function calibrationTable(context: ReportContext): Block[] {
  const calibration = context.assessment.certainty?.calibration;
  if (!calibration || calibration.measured.length === 0) return [];
  return [
    {
      kind: 'table',
      title: '',
      columns: [
        wordColumn('Measured', 1.8),
        figureColumn('Believed before', '', 1.6),
        figureColumn('Measured', '', 1),
        figureColumn('Believed after', '', 1.6),
        wordColumn('Unit', 0.7),
      ],
      rows: calibration.measured.map((row) => measuredRow(context, row)),
      note: [],
      rowHeads: true,
      compact: true,
    },
    ...movedList(calibration),
  ];
}

/** Figures are in SI; the row is read in the unit that it names. */
function measuredRow(
  { system }: ReportContext,
  { quantity, measured, before, after, unit: written }: CalibrationOutcome['measured'][number],
): TableRow {
  const [dimension] = findUnits(written).map((found) => found.dimension);
  const unit = dimension === undefined ? written : displayUnitOf(measured, dimension, displaySystems[system]);
  const [known] = findUnits(unit);
  const show = (value: number) => number(known === undefined ? value : known.fromSi(value), 3);
  const text = (band: Band | null) => (band === null ? none : banded(band, null, show));
  return {
    cells: [
      head(capitalised(fieldWords(quantity))),
      cell(text(before)),
      cell(show(measured)),
      cell(text(after)),
      cell(unit),
    ],
  };
}

/** Inputs of all candidates that the measurements moved. */
function movedList({ moved }: CalibrationOutcome): Block[] {
  if (moved.length === 0) return [];
  const items = moved.map(({ label, beforeShown, afterShown }) => [
    { text: `${capitalised(label)}: `, strong: true },
    { text: `${beforeShown} → ${afterShown}` },
  ]);
  return [{ kind: 'list', ordered: false, items, style: 'small' }];
}
