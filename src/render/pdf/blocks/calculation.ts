import type { Block, Inline } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { breakLines, drawLines } from '../lines.js';
import { columnWidths, type } from '../style.js';
import type { Tag } from '../tags.js';

/** One line of the working: quantity, equation, numbers, result; the source below. */
export function calculationBox(
  press: Press,
  line: Extract<Block, { kind: 'calculation' }>,
  width: number,
  parent: Tag,
): Box {
  const { typesetter } = press;
  const widths = columnWidths(width, [2.2, 3, 3, 1.5]);
  const texts: Inline[] = [
    [{ text: line.quantity, strong: true }],
    [{ text: line.equation, emphasis: true }],
    [{ text: line.numbers }],
    [{ text: `= ${line.result}`, strong: true }],
  ];
  const cells = texts.map((text, index) => breakLines(typesetter, text, type.table, widths[index]!));
  const source = breakLines(typesetter, line.source === '' ? [] : [{ text: line.source }], type.small, width);
  const upper = Math.max(...cells.map((lines) => lines.length)) * type.table.leading;
  return {
    height: upper + source.length * type.small.leading,
    before: 3,
    after: 3,
    keepWithNext: false,
    draw: (x, y) => {
      press.tags.add(parent, 'P', () => {
        let left = x;
        cells.forEach((lines, index) => {
          drawLines(typesetter, lines, type.table, { x: left, y, width: widths[index]! });
          left += widths[index]! + 20;
        });
        drawLines(typesetter, source, type.small, { x, y: y + upper, width });
      });
    },
  };
}
