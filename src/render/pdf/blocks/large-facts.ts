import type { Fact } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { breakLines, drawLines, type Line } from '../lines.js';
import { columnWidths, gutter, palette, type TextStyle, type } from '../style.js';
import type { Tag, TagKind } from '../tags.js';

/** A grid of facts, the cells of which stand under their own rules. */
interface Grid {
  items: Fact[];
  columns: number;
}

/** One text of a cell and what it is to software that reads aloud. */
interface Part {
  lines: Line[];
  style: TextStyle;
  kind: TagKind;
}

const labelStyle: TextStyle = { ...type.small, face: 'strong', colour: palette.accent };
const pad = { top: 4, bottom: 5 };

/** Large figures, each under a rule with its name above it and a line of small print below. */
export function headlineBoxes(press: Press, grid: Grid, width: number, parent: Tag): Box[] {
  const layCell = (fact: Fact, room: number): Part[] => [
    part(press, fact.label, labelStyle, 'Lbl', room),
    part(press, fact.value, type.headline, 'LBody', room),
    part(press, fact.note ?? '', type.small, 'LBody', room),
  ];
  return rowsOf(grid).map((row, index, rows): Box => {
    const cells = cellsOf(row, grid.columns, width, layCell);
    const height = Math.max(...cells.map(({ parts }) => heightOf(parts))) + pad.top + pad.bottom;
    return {
      ...{ height, before: index === 0 ? 6 : 3, after: index === rows.length - 1 ? 6 : 3 },
      keepWithNext: false,
      draw: drawer(press, parent, (list, x, y) => {
        for (const { left, room, parts } of cells) {
          ruleAbove(press, x + left, y, room);
          drawParts(press, list, parts, { x: x + left, y: y + pad.top, width: room });
        }
      }),
    };
  });
}

/** How high a line to write on stands above the next. */
const writingHeight = 17;

/** Lines to fill in by hand: what goes there in small print, and room to write above the rule. */
export function blankBoxes(press: Press, grid: Grid, width: number, parent: Tag): Box[] {
  const layCell = (fact: Fact, room: number): Part[] => [
    part(press, fact.label, type.small, 'Lbl', room),
    part(press, fact.value, type.body, 'LBody', room),
  ];
  return rowsOf(grid).map((row, index, rows): Box => {
    const cells = cellsOf(row, grid.columns, width, layCell);
    const height = Math.max(...cells.map(({ parts }) => heightOf(parts))) + writingHeight;
    return {
      ...{ height, before: index === 0 ? 2 : 3, after: index === rows.length - 1 ? 6 : 3 },
      keepWithNext: false,
      draw: drawer(press, parent, (list, x, y) => {
        for (const { left, room, parts } of cells) {
          drawParts(press, list, parts, { x: x + left, y, width: room });
          rule(press, x + left, y + height - 0.4, room, 0.8);
        }
      }),
    };
  });
}

function rowsOf({ items, columns }: Grid): Fact[][] {
  const count = Math.ceil(items.length / columns);
  return Array.from({ length: count }, (_, row) => items.slice(row * columns, (row + 1) * columns));
}

function cellsOf(
  row: Fact[],
  columns: number,
  width: number,
  lay: (fact: Fact, room: number) => Part[],
): { left: number; room: number; parts: Part[] }[] {
  const room = columnWidths(width, Array<number>(columns).fill(1))[0]!;
  return row.map((fact, index) => ({ left: index * (room + gutter), room, parts: lay(fact, room) }));
}

function part({ typesetter }: Press, text: string, style: TextStyle, kind: TagKind, room: number): Part {
  return { lines: breakLines(typesetter, text === '' ? [] : [{ text }], style, room), style, kind };
}

function heightOf(parts: Part[]): number {
  return parts.reduce((sum, { lines, style }) => sum + lines.length * style.leading, 0);
}

/** Each row is a list of its own, as its box may be the only one on its page. */
function drawer(press: Press, parent: Tag, draw: (list: Tag, x: number, y: number) => void): Box['draw'] {
  return (x, y) => draw(press.tags.open(parent, 'L'), x, y);
}

function drawParts(
  press: Press,
  list: Tag,
  parts: Part[],
  frame: { x: number; y: number; width: number },
): void {
  const entry = press.tags.open(list, 'LI');
  let y = frame.y;
  for (const { lines, style, kind } of parts) {
    if (lines.length === 0) continue;
    const at = { ...frame, y };
    press.tags.add(entry, kind, () => drawLines(press.typesetter, lines, style, at));
    y += lines.length * style.leading;
  }
}

function ruleAbove(press: Press, x: number, y: number, width: number): void {
  rule(press, x, y, width, 1.2, palette.accent);
}

function rule(
  press: Press,
  x: number,
  y: number,
  width: number,
  weight: number,
  colour: string = palette.ink,
): void {
  press.tags.artifact('Layout', () => {
    press.document
      .moveTo(x, y)
      .lineTo(x + width, y)
      .lineWidth(weight)
      .stroke(colour);
  });
}
