import type { Fact, Inline } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { breakLines, drawLines, type Line } from '../lines.js';
import { columnWidths, palette, type TextStyle, type } from '../style.js';
import type { Tag } from '../tags.js';

const valueStyle: TextStyle = type.compactTable;
const labelStyle: TextStyle = { ...type.compactTable, colour: palette.muted };
const pad = 0.75;

interface LaidFact {
  label: Line[];
  value: Line[];
  labelWidth: number;
  width: number;
}

/** A grid of label and value; fills rows from left to right. */
export function factsBoxes(
  press: Press,
  facts: { items: Fact[]; columns: number },
  width: number,
  parent: Tag,
): Box[] {
  const widths = columnWidths(
    width,
    Array.from({ length: facts.columns }, () => 1),
  );
  const labelWidth = Math.min(
    widths[0]! * 0.5,
    6 +
      Math.max(...facts.items.map((fact) => press.typesetter.width(fact.label, 'regular', labelStyle.size))),
  );
  const rows: LaidFact[][] = [];
  facts.items.forEach((fact, index) => {
    if (index % facts.columns === 0) rows.push([]);
    rows.at(-1)!.push(layFact(press, fact, labelWidth, widths[index % facts.columns]!));
  });
  let list: Tag | undefined;
  return rows.map((row, index): Box => {
    const lines = Math.max(...row.map((fact) => Math.max(fact.label.length, fact.value.length)));
    const height = lines * valueStyle.leading + 2 * pad;
    return {
      height,
      before: index === 0 ? 3 : 0,
      after: index === rows.length - 1 ? 6 : 0,
      keepWithNext: keepsNext(index, rows.length),
      draw: (x, y) => {
        list ??= press.tags.open(parent, 'L');
        drawFacts(press, list, row, x, y, height);
      },
    };
  });
}

/** So few rows stand together under their heading: the rest of them on another page would belong to nothing. */
const fewRows = 5;

/** Few rows are not parted; of more, no row stands alone on a page. */
function keepsNext(index: number, count: number): boolean {
  if (index === count - 1) return false;
  return count <= fewRows || index === 0 || index === count - 2;
}

function layFact({ typesetter }: Press, fact: Fact, labelWidth: number, width: number): LaidFact {
  const note: Inline = fact.note ? [{ text: ` ${fact.note}`, emphasis: true }] : [];
  return {
    label: breakLines(typesetter, [{ text: fact.label }], labelStyle, labelWidth - 6),
    value: breakLines(typesetter, [{ text: fact.value }, ...note], valueStyle, width - labelWidth),
    labelWidth,
    width,
  };
}

function drawFacts(press: Press, list: Tag, row: LaidFact[], x: number, y: number, height: number): void {
  let left = x;
  for (const fact of row) {
    const at = left;
    const entry = press.tags.open(list, 'LI');
    const frame = { x: at, y: y + pad, width: fact.width };
    press.tags.add(entry, 'Lbl', () => drawLines(press.typesetter, fact.label, labelStyle, frame));
    const values = { ...frame, x: at + fact.labelWidth };
    press.tags.add(entry, 'LBody', () => drawLines(press.typesetter, fact.value, valueStyle, values));
    press.tags.artifact('Layout', () => {
      const base = y + height - 0.25;
      press.document
        .moveTo(at, base)
        .lineTo(at + fact.width, base)
        .lineWidth(0.5)
        .stroke(palette.hairline);
    });
    left += fact.width + (row.length > 1 ? 20 : 0);
  }
}
