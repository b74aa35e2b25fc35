import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';
import type { TableBlock, TableCell } from '../document.js';
import { joined, none, readings } from '../words/figures.js';
import { candidateTable } from './candidate-table.js';
import { cell, figureColumn, wordColumn } from './cells.js';

/** One side of a drive against the side of the space that it lies along, in metres; null: no limit there. */
interface Side {
  driveM: number;
  freeM: number | null;
}

/** A drive turned so that it fits best: longest side along the longest of the space. */
export function bestTurn(sides: readonly number[], rooms: readonly (number | null)[]): Side[] {
  const longest = (room: number | null) => room ?? Number.POSITIVE_INFINITY;
  const free = [...rooms].sort((a, b) => (longest(a) === longest(b) ? 0 : longest(b) - longest(a)));
  return [...sides].sort((a, b) => b - a).map((driveM, index) => ({ driveM, freeM: free[index] ?? null }));
}

/** The tightest side, by how much is left of it; null where no side has a limit. */
export function tightest(turn: readonly Side[]): (Side & { leftM: number }) | null {
  const limited = turn.flatMap(({ driveM, freeM }) =>
    freeM === null ? [] : [{ driveM, freeM, leftM: freeM - driveM }],
  );
  return limited.sort((a, b) => a.leftM - b.leftM)[0] ?? null;
}

/** Box of every drive against the space for it, and money and hours; empty of boxes where no space is given. */
export function fitTable(context: ReportContext): TableBlock {
  const { space } = context.assessment.study;
  const hasSpace = [space.lengthM, space.widthM, space.heightM].some((side) => side !== null);
  const { currency, phrases } = context;
  const { unit } = context.units.length;
  return candidateTable(context, {
    share: 2.6,
    columns: [
      figureColumn('Box of the drive', unit, 1.5),
      ...(hasSpace ? [figureColumn('Left on its tightest side', unit, 1.2), wordColumn('Fits', 0.8)] : []),
      figureColumn('Cost', currency, 0.8),
      figureColumn('Work', 'h', 0.7),
      figureColumn('Work at its price', currency, 1),
      figureColumn('Together', currency, 0.9),
    ],
    cells: (candidate) => fitCells(context, candidate, hasSpace),
    note: hasSpace ? phrases('fit-note', { space: spaceWords(context) }) : phrases('fit-note-no-space'),
  });
}

function fitCells(context: ReportContext, candidate: CandidateAssessment, hasSpace: boolean): TableCell[] {
  const { nominal } = candidate;
  const { study } = context.assessment;
  const workMoney = nominal.reworkTimeS === null ? null : (nominal.reworkTimeS / 3600) * study.hourPriceMoney;
  const together = nominal.cost === null || workMoney === null ? null : nominal.cost + workMoney;
  return [
    ...boxCells(context, candidate, hasSpace),
    cell(readings.money.show(nominal.cost)),
    cell(readings.hours.show(nominal.reworkTimeS)),
    cell(readings.money.show(workMoney)),
    cell(readings.money.show(together)),
  ];
}

function boxCells(context: ReportContext, candidate: CandidateAssessment, hasSpace: boolean): TableCell[] {
  const { study } = context.assessment;
  const sheet = study.candidates.find((one) => one.id === candidate.id)?.sheet;
  const sides = [sheet?.lengthM, sheet?.widthM, sheet?.heightM].filter((side) => typeof side === 'number');
  if (sides.length < 3) return hasSpace ? [cell(none), cell(none), fitsCell(candidate)] : [cell(none)];
  const { length } = context.units;
  const turn = bestTurn(sides, [study.space.lengthM, study.space.widthM, study.space.heightM]);
  const box = cell(turn.map(({ driveM }) => length.show(driveM)).join(' × '));
  if (!hasSpace) return [box];
  const tight = tightest(turn);
  return [box, cell(tight === null ? none : length.show(tight.leftM)), fitsCell(candidate)];
}

function fitsCell({ nominal: { fits } }: CandidateAssessment): TableCell {
  if (fits === null) return cell('not judged', 'muted');
  return fits ? cell('✓ yes', 'good') : cell('✗ no', 'bad');
}

/** `260 × 100 × 70 mm`; a side without a limit as `any`. */
function spaceWords(context: ReportContext): string {
  const { lengthM, widthM, heightM } = context.assessment.study.space;
  const { length } = context.units;
  return `${bestTurn([0, 0, 0], [lengthM, widthM, heightM])
    .map(({ freeM }) => (freeM === null ? 'any' : length.show(freeM)))
    .join(' × ')}${joined}${length.unit}`;
}
