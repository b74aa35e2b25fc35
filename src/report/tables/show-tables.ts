import { criterionNames } from '../../assess/criterion-words.js';
import { positionOf } from '../../assess/figures.js';
import { displaySystems } from '../../quantity/display-units.js';
import { formatQuantity } from '../../quantity/format.js';
import type { Criterion } from '../../study/choosing.js';
import type { Cue } from '../../study/show.js';
import type { ReportContext } from '../context.js';
import type { Block, TableBlock, TableColumn, TableRow } from '../document.js';
import { probability } from '../words/bands.js';
import { criterionFigure, limitDemand } from '../words/criterion-words.js';
import { capitalised, fixed, joined, none, withReading } from '../words/figures.js';
import { cell, figureColumn, groupRow, head, row, wordColumn } from './cells.js';

/** The cue list as it was read: every cue with where it ends, how long it lasts and how bright it is. */
export function cueTable(context: ReportContext): Block[] {
  const { leadIn, loop } = context.assessment.study.show;
  if (leadIn.length + loop.length === 0) return [];
  const part = (name: string, cues: Cue[]): TableRow[] =>
    cues.length === 0 ? [] : [groupRow(context.phrases(name)), ...cues.map((cue) => cueRow(context, cue))];
  return [
    listTable(
      [
        wordColumn('Cue', 1.6),
        wordColumn('Does', 0.6),
        figureColumn('Ends at', '', 0.8),
        figureColumn('Lasts', '', 0.8),
        wordColumn('Motion law', 1.1),
        figureColumn('Lights', '', 0.7),
        wordColumn('Note', 2.6),
      ],
      [...part('cues-once', leadIn), ...part('cues-looped', loop)],
    ),
  ];
}

function cueRow(context: ReportContext, cue: Cue): TableRow {
  const { name, action, toPosition, durationS, law, lightsFraction, note } = cue;
  return row(
    head(name === '' ? none : name),
    cell(action),
    cell(positionText(context, toPosition)),
    cell(withReading(durationS, 'seconds')),
    cell(action === 'move' ? law : none),
    cell(probability(lightsFraction)),
    cell(note, 'muted'),
  );
}

/** A position of the feature in the reader's units: degrees on a hinge, a length on a rail. */
export function positionText({ assessment, system }: ReportContext, position: number): string {
  const isHinge = assessment.study.feature.kind === 'hinge';
  const text = isHinge
    ? positionOf(position, true)
    : formatQuantity(position, 'length', displaySystems[system]);
  return text.replace('-', '−').replace(' ', joined);
}

/** Weights, worths and limits as they were read, so that a score can be followed. */
export function criteriaTable(context: ReportContext): Block[] {
  const { criteria } = context.assessment.study;
  if (criteria.length === 0) return [];
  const sum = criteria.reduce((total, { weightScore }) => total + weightScore, 0);
  const columns = [
    wordColumn('Criterion', 1.6),
    figureColumn('Weight', '', 0.6),
    figureColumn('of all', '', 0.6),
    figureColumn('Worth 0 at', '', 0.9),
    figureColumn('Worth 1 at', '', 0.9),
    figureColumn('Must be', '', 0.9),
    wordColumn('Note', 2.6),
  ];
  return [
    listTable(
      columns,
      criteria.map((criterion) => criterionRow(context, criterion, sum)),
    ),
  ];
}

function criterionRow(context: ReportContext, criterion: Criterion, sum: number): TableRow {
  const { id, weightScore, worthless, worthFull, must, origin, note } = criterion;
  const isWeighed = weightScore > 0;
  const usual = origin === 'assumed' ? context.phrases('criterion-assumed') : '';
  return row(
    head(capitalised(criterionNames[id])),
    cell(isWeighed ? fixed(weightScore, Number.isInteger(weightScore) ? 0 : 2) : none),
    cell(isWeighed ? probability(weightScore / sum) : none),
    cell(isWeighed ? criterionFigure(id, worthless, context) : none),
    cell(isWeighed ? criterionFigure(id, worthFull, context) : none),
    cell(
      must === null
        ? none
        : limitDemand({ criterion: id, limit: must.bound, direction: must.direction }, context),
    ),
    cell([usual, note].filter((part) => part !== '').join(' '), 'muted'),
  );
}

function listTable(columns: TableColumn[], rows: TableRow[]): TableBlock {
  return { kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true };
}
