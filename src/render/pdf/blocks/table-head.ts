import type { TableBlock, TableColumn } from '../../../report/document.js';
import type { Press } from '../box.js';
import { breakLines, drawLines, type Line } from '../lines.js';
import { palette, type TextStyle, type } from '../style.js';
import type { Tag } from '../tags.js';
import { cellPad } from './column-widths.js';

const unitStyle: TextStyle = { ...type.tableHead, face: 'regular' };
const pad = 2.4;

/** The head of a table, laid out once and drawn on every page. */
export interface TableHead {
  height: number;
  width: number;
  cells: { column: TableColumn; width: number; heading: Line[]; unit: Line[] }[];
}

/** Lays the head out; null when no column has a heading. */
export function layTableHead(press: Press, table: TableBlock, widths: number[]): TableHead | null {
  if (table.columns.every((column) => column.heading === '')) return null;
  const cells = table.columns.map((column, index) => {
    const inner = widths[index]! - 2 * cellPad;
    const unit = column.unit === '' ? [] : [{ text: column.unit }];
    return {
      column,
      width: widths[index]!,
      heading: breakLines(press.typesetter, [{ text: column.heading }], type.tableHead, inner),
      unit: breakLines(press.typesetter, unit, unitStyle, inner),
    };
  });
  const lines = Math.max(...cells.map((cell) => cell.heading.length + cell.unit.length));
  const width = widths.reduce((sum, value) => sum + value, 0);
  return { cells, width, height: lines * type.tableHead.leading + 2 * pad + 1 };
}

/** Draws the head; as part of the table the first time, as mere repetition when `row` is null. */
export function drawTableHead(
  { document, tags, typesetter }: Press,
  head: TableHead,
  x: number,
  y: number,
  row: Tag | null,
): void {
  let left = x;
  for (const { column, width, heading, unit } of head.cells) {
    const frame = { x: left + cellPad, y: y + pad, width: width - 2 * cellPad, align: column.align };
    const draw = (): void => {
      const below = drawLines(typesetter, heading, type.tableHead, frame);
      drawLines(typesetter, unit, unitStyle, { ...frame, y: frame.y + below });
    };
    if (row) tags.add(row, 'TH', draw, { scope: 'Column' });
    else tags.artifact('Pagination', draw);
    left += width;
  }
  tags.artifact('Layout', () => {
    const base = y + head.height - 0.5;
    document
      .moveTo(x, base)
      .lineTo(x + head.width, base)
      .lineWidth(0.9)
      .stroke(palette.rule);
  });
}
