import type { CandidateAssessment } from '../../assess/assessment.js';
import { destroyedCaseK } from '../../assess/thresholds.js';
import { bandOf, type ReportContext } from '../context.js';
import type { TableBlock, TableCell } from '../document.js';
import { banded } from '../words/bands.js';
import { none, type Reading, withReading } from '../words/figures.js';
import { heatReadings } from '../words/survivable.js';
import { candidateTable } from './candidate-table.js';
import { cell, figureColumn, wordColumn } from './cells.js';

/** Winding and case of every candidate in the show and held for ever, against their limits; the share of on-time. */
export function heatTable(context: ReportContext): TableBlock {
  const hasShare = context.candidates.some(({ nominal }) => nominal.onShareFraction !== null);
  const { unit } = context.units.temperature;
  return candidateTable(context, {
    share: 2.4,
    columns: [
      figureColumn('Winding, in the show', unit, 1.3),
      figureColumn('Case, in the show', unit, 1.2),
      figureColumn('Winding, held for ever', unit, 1.3),
      figureColumn('Case, held for ever', unit, 1.1),
      figureColumn('Winding limit', unit, 0.9),
      wordColumn('Held, the limit comes', 1.5),
      ...(hasShare ? [wordColumn('On-time', 1.4)] : []),
    ],
    cells: (candidate) => heatCells(context, candidate, hasShare),
    note: context.phrases(hasShare ? 'heat-note-share' : 'heat-note', {
      destroyed: withReading(destroyedCaseK, context.units.temperature),
    }),
    roomy: true,
  });
}

function heatCells(context: ReportContext, candidate: CandidateAssessment, hasShare: boolean): TableCell[] {
  const { nominal } = candidate;
  const { temperature } = context.units;
  const reads = heatReadings(context, candidate);
  const sheet = context.assessment.study.candidates.find((one) => one.id === candidate.id)?.sheet;
  const settled = (value: number | null, { show }: Reading): TableCell =>
    value === null && nominal.thermalRunaway ? cell('never settles', 'bad') : cell(show(value));
  return [
    cell(banded(bandOf(candidate, 'windingTemperatureK'), nominal.windingTemperatureK, reads.winding)),
    cell(banded(bandOf(candidate, 'caseTemperatureK'), nominal.caseTemperatureK, reads.case)),
    settled(nominal.settledHoldWindingK, reads.winding),
    settled(nominal.settledHoldCaseK, reads.case),
    cell(temperature.show(sheet?.windingLimitK)),
    cell(limitWords(candidate), nominal.timeToLimitHoldingS === null ? undefined : 'bad'),
    ...(hasShare ? [cell(shareWords(nominal.onShareFraction, sheet?.onShareFraction ?? null))] : []),
  ];
}

function limitWords({ nominal }: CandidateAssessment): string {
  if (nominal.windingTemperatureK === null && nominal.settledHoldWindingK === null) return none;
  return nominal.timeToLimitHoldingS === null
    ? 'never'
    : `after ${withReading(nominal.timeToLimitHoldingS, 'minutes')}`;
}

function shareWords(worst: number | null, allowed: number | null): string {
  if (worst === null) return none;
  const runs = `runs ${withReading(worst, 'percent')}`;
  return allowed === null ? runs : `${runs}, rated ${withReading(allowed, 'percent')}`;
}
