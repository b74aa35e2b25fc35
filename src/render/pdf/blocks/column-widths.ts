import type { TableBlock } from '../../../report/document.js';
import { widestWord } from '../lines.js';
import { type TextStyle, type } from '../style.js';
import type { Typesetter } from '../typesetter.js';

/** White space left and right of a cell's text. */
export const cellPad = 4;

/**
 * Widths of a table's columns: by their shares, but none narrower than its longest word; those that can, give way.
 */
export function tableWidths(
  typesetter: Typesetter,
  table: TableBlock,
  width: number,
  style: TextStyle,
): number[] {
  const least = table.columns.map((column, index) => {
    const head = [{ text: column.heading }];
    const words = [
      widestWord(typesetter, head, type.tableHead),
      widestWord(typesetter, [{ text: column.unit }], type.tableHead),
      ...table.rows
        .filter((row) => !row.group)
        .filter((row) => row.cells.length === table.columns.length)
        .map((row) => widestWord(typesetter, row.cells[index]!.text, style)),
    ];
    return Math.min(Math.max(...words) + 2 * cellPad, width * 0.4);
  });
  return distribute(
    width,
    table.columns.map((column) => column.share),
    least,
  );
}

/** Shares a width out; who would get less than the least gets the least, the others share the rest. */
export function distribute(width: number, shares: number[], least: number[]): number[] {
  const isFixed = shares.map(() => false);
  for (;;) {
    const free = width - least.reduce((sum, value, index) => sum + (isFixed[index] ? value : 0), 0);
    const weight = shares.reduce((sum, share, index) => sum + (isFixed[index] ? 0 : share), 0);
    const widths = shares.map((share, index) => (isFixed[index] ? least[index]! : (free * share) / weight));
    const tight = widths.findIndex((value, index) => !isFixed[index] && value < least[index]!);
    if (tight < 0) return widths;
    if (isFixed.filter((fixed) => !fixed).length === 1) return scaled(least, width);
    isFixed[tight] = true;
  }
}

function scaled(values: number[], width: number): number[] {
  const sum = values.reduce((total, value) => total + value, 0);
  return values.map((value) => (value * width) / sum);
}
