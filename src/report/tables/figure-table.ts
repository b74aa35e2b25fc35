import type { TableBlock, TableRow } from '../document.js';
import { none, type Reading, type ReadingName, readingOf } from '../words/figures.js';
import { cell, figureColumn, groupRow, row, wordColumn } from './cells.js';

/** One outcome: its name, its value as written and the unit. */
export interface FigureRow {
  name: string;
  value: string;
  unit: string;
}

/** A row whose value is read in a unit from the list. */
export function figure(
  name: string,
  value: number | null | undefined,
  reading: ReadingName | Reading,
): FigureRow {
  const { unit, show } = readingOf(reading);
  const shown = show(value);
  return { name, value: shown, unit: shown === none ? '' : unit };
}

/** A row whose value is words. */
export function words(name: string, value: string): FigureRow {
  return { name, value, unit: '' };
}

/** A yes-or-no row; null is not judged. */
export function yesNo(name: string, value: boolean | null, ifNull = 'not judged'): FigureRow {
  return words(name, value === null ? ifNull : value ? 'yes' : 'no');
}

/** Words take the place of the unit as well; figures stay under figures. */
function figureRow({ name, value, unit }: FigureRow): TableRow {
  if (unit === '' && !/^[−–\d]/.test(value)) return row(cell(name), { ...cell(value), span: 2 });
  return row(cell(name), cell(value), cell(unit));
}

/** Figures under group headings, value and unit in columns of their own. */
export function figureTable(groups: { title: string; rows: FigureRow[] }[]): TableBlock {
  const rows: TableRow[] = groups
    .filter((group) => group.rows.length > 0)
    .flatMap((group) => [groupRow(group.title), ...group.rows.map(figureRow)]);
  const columns = [wordColumn('', 3), figureColumn('', '', 1.4), wordColumn('', 0.8)];
  return { kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true };
}
