import type { TableBlock, TableCell, TableRow } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { breakLines, drawLines, type Line } from '../lines.js';
import { palette, type TextStyle, type } from '../style.js';
import type { Tag } from '../tags.js';
import { cellPad, tableWidths } from './column-widths.js';
import { drawTableHead, layTableHead, type TableHead } from './table-head.js';
import { paragraphBoxes } from './text.js';

/** A table while it is set. */
interface Sheet {
  press: Press;
  table: TableBlock;
  widths: number[];
  width: number;
  parent: Tag;
  style: TextStyle;
  groupStyle: TextStyle;
  /** White space above and below a row's text. */
  pad: number;
  /** Opened when the first row is drawn. */
  tag: Tag | null;
  body: Tag | null;
}

/** A table: its head comes again on every page, a row is never cut, figures stand to the right. */
export function tableBoxes(press: Press, table: TableBlock, width: number, parent: Tag): Box[] {
  const style = table.compact ? type.compactTable : type.table;
  const widths = tableWidths(press.typesetter, table, width, style);
  const groupStyle: TextStyle = { ...style, face: 'strong', colour: palette.accent };
  const sheet: Sheet = {
    ...{ press, table, width, parent, widths, style, groupStyle },
    ...{ pad: table.compact ? 0.9 : 2.6, tag: null, body: null },
  };
  const head = layTableHead(press, table, widths);
  const rows = rowBoxes(sheet, head);
  const last = rows.at(-1);
  if (last) last.after = 7;
  // No row stands alone on the next page.
  const beforeLast = rows.at(-2);
  if (beforeLast) beforeLast.keepWithNext = true;
  const note = paragraphBoxes(press, table.note, type.small, width, parent);
  if (last && note.length > 0) last.keepWithNext = true;
  return [...titleBoxes(sheet), ...(head ? [headBox(sheet, head)] : []), ...rows, ...note];
}

/** The title, as the first part of the table. */
function titleBoxes(sheet: Sheet): Box[] {
  const { press, table, width } = sheet;
  if (table.title === '') return [];
  const style = type.subheading;
  const lines = breakLines(press.typesetter, [{ text: table.title }], style, width);
  const draw = (x: number, y: number): void => {
    const caption = press.tags.open(openTable(sheet), 'Caption');
    press.tags.add(caption, 'P', () => drawLines(press.typesetter, lines, style, { x, y, width }));
  };
  return [{ height: lines.length * style.leading, before: 8, after: 2, keepWithNext: true, draw }];
}

function openTable(sheet: Sheet): Tag {
  const { tags } = sheet.press;
  sheet.tag ??= tags.open(sheet.parent, 'Table', sheet.table.title ? { title: sheet.table.title } : {});
  return sheet.tag;
}

function headBox(sheet: Sheet, head: TableHead): Box {
  const { tags } = sheet.press;
  return {
    height: head.height,
    before: 3,
    after: 0,
    keepWithNext: true,
    draw: (x, y) => {
      const row = tags.open(tags.open(openTable(sheet), 'THead'), 'TR');
      drawTableHead(sheet.press, head, x, y, row);
    },
  };
}

function rowBoxes(sheet: Sheet, head: TableHead | null): Box[] {
  const { press, table } = sheet;
  const tallest = press.geometry.bottom - press.geometry.top - (head?.height ?? 0);
  const repeated = head && {
    height: head.height,
    draw: (x: number, y: number) => drawTableHead(press, head, x, y, null),
  };
  return table.rows.flatMap((row, index) =>
    cutRow(sheet, layRow(sheet, row), tallest).map(
      (lines): Box => ({ ...rowBox(sheet, row, index, lines), ...(repeated ? { repeated } : {}) }),
    ),
  );
}

/** Where each cell of a row stands; a cell may span several columns. */
function placesOf(row: TableRow, widths: number[]): { column: number; left: number; width: number }[] {
  let [column, left] = [0, 0];
  return row.cells.map((cell) => {
    const spanned = widths.slice(column, column + (cell.span ?? 1));
    const place = { column, left, width: spanned.reduce((sum, width) => sum + width, 0) };
    column += spanned.length;
    left += place.width;
    return place;
  });
}

function layRow({ press, widths, width, style, groupStyle }: Sheet, row: TableRow): Line[][] {
  const inner = (cell: TableCell | undefined, how: TextStyle, room: number) =>
    breakLines(press.typesetter, cell?.text ?? [], how, room - 2 * cellPad);
  if (row.group) return [inner(row.cells[0], groupStyle, width)];
  return placesOf(row, widths).map(({ width: room }, index) => inner(row.cells[index], style, room));
}

/** A row higher than a page goes over several; every other row stays whole. */
function cutRow({ style, pad }: Sheet, cells: Line[][], tallest: number): Line[][][] {
  const most = Math.max(1, Math.floor((tallest - 2 * pad) / style.leading));
  const count = Math.max(1, ...cells.map((lines) => lines.length));
  const parts: Line[][][] = [];
  for (let from = 0; from < count; from += most)
    parts.push(cells.map((lines) => lines.slice(from, from + most)));
  return parts;
}

function rowBox(sheet: Sheet, row: TableRow, index: number, cells: Line[][]): Box {
  const lines = Math.max(1, ...cells.map((cell) => cell.length));
  const above = row.group && index > 0 ? 4 : 0;
  const height = lines * sheet.style.leading + 2 * sheet.pad;
  return {
    height: height + above,
    before: 0,
    after: 0,
    keepWithNext: row.group === true,
    draw: (x, y) => drawRow(sheet, row, cells, { x, y: y + above, height }),
  };
}

function drawRow(
  sheet: Sheet,
  row: TableRow,
  cells: Line[][],
  place: { x: number; y: number; height: number },
): void {
  const { press, table, widths, width, style, groupStyle, pad } = sheet;
  const { document, tags, typesetter } = press;
  const { x, y, height } = place;
  sheet.body ??= tags.open(openTable(sheet), 'TBody');
  const line = tags.open(sheet.body, 'TR');
  if (row.highlighted) tags.artifact('Layout', () => document.rect(x, y, width, height).fill(palette.band));
  const places = row.group ? [{ column: 0, left: 0, width }] : placesOf(row, widths);
  places.forEach(({ column, left, width: room }, index) => {
    const frame = {
      ...{ x: x + left + cellPad, y: y + pad, width: room - 2 * cellPad },
      align: row.group ? ('left' as const) : table.columns[column]!.align,
      colour: row.group ? groupStyle.colour : toneColour(row.cells[index]),
    };
    const isHead = row.group || (index === 0 && table.rowHeads);
    const draw = () => drawLines(typesetter, cells[index] ?? [], row.group ? groupStyle : style, frame);
    const tag = tags.add(
      line,
      isHead ? 'TH' : 'TD',
      draw,
      isHead ? { scope: row.group ? 'Column' : 'Row' } : {},
    );
    const spanned = row.group ? table.columns.length : (row.cells[index]?.span ?? 1);
    if (spanned > 1) tags.span(tag, spanned);
  });
  tags.artifact('Layout', () => {
    const base = y + height - 0.25;
    document
      .moveTo(x, base)
      .lineTo(x + width, base)
      .lineWidth(row.group ? 0.8 : 0.5)
      .stroke(row.group ? palette.rule : palette.hairline);
  });
}

function toneColour(cell: TableCell | undefined): string {
  if (cell?.tone === 'good') return palette.good;
  if (cell?.tone === 'bad') return palette.bad;
  return cell?.tone === 'muted' ? palette.muted : palette.ink;
}
