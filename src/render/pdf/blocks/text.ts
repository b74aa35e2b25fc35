import type { Inline } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { breakLines, drawLines, type Line } from '../lines.js';
import { palette, type TextStyle, type } from '../style.js';
import type { Tag, TagKind } from '../tags.js';

const headingStyles = { 1: type.title, 2: type.heading, 3: type.subheading } as const;
const headingGaps = { 1: [0, 7], 2: [14, 5], 3: [9, 3] } as const;

/** A heading; it takes what follows with it to the next page. */
export function headingBox(
  press: Press,
  heading: { level: 1 | 2 | 3; text: string },
  width: number,
  parent: Tag,
  kind: TagKind,
): Box {
  const style = headingStyles[heading.level];
  const lines = breakLines(press.typesetter, [{ text: heading.text }], style, width);
  const [before, after] = headingGaps[heading.level];
  return {
    height: lines.length * style.leading,
    before,
    after,
    keepWithNext: true,
    draw: (x, y) => {
      press.tags.add(parent, kind, () => drawLines(press.typesetter, lines, style, { x, y, width }));
    },
  };
}

/** A paragraph: short ones stay whole, long ones break with two lines on either side. */
export function paragraphBoxes(
  press: Press,
  text: Inline,
  style: TextStyle,
  width: number,
  parent: Tag,
): Box[] {
  const lines = breakLines(press.typesetter, text, style, width);
  let tag: Tag | undefined;
  return lineGroups(lines).map(
    (group, index, groups): Box => ({
      height: group.length * style.leading,
      before: index === 0 ? 4 : 0,
      after: index === groups.length - 1 ? 5 : 0,
      keepWithNext: false,
      draw: (x, y) => {
        tag ??= press.tags.open(parent, 'P');
        press.tags.mark(tag, () => drawLines(press.typesetter, group, style, { x, y, width }));
      },
    }),
  );
}

/** Lines that must stay together: the whole of a short text; of a long one the first two and the last two. */
function lineGroups(lines: Line[]): Line[][] {
  if (lines.length === 0) return [];
  if (lines.length < 5) return [lines];
  const middle = lines.slice(2, -2).map((line) => [line]);
  return [lines.slice(0, 2), ...middle, lines.slice(-2)];
}

const answerPad = { x: 14, y: 10, bar: 4 };

/** The answer: the one sentence that is seen first. */
export function answerBox(press: Press, text: Inline, width: number, parent: Tag): Box {
  const style = type.answer;
  const inner = width - 2 * answerPad.x - answerPad.bar;
  const lines = breakLines(press.typesetter, text, style, inner);
  const height = lines.length * style.leading + 2 * answerPad.y;
  return {
    height,
    before: 9,
    after: 9,
    keepWithNext: false,
    draw: (x, y) => {
      press.tags.artifact('Layout', () => {
        press.document.rect(x, y, width, height).fill(palette.band);
        press.document.rect(x, y, answerPad.bar, height).fill(palette.accent);
      });
      const frame = { x: x + answerPad.bar + answerPad.x, y: y + answerPad.y, width: inner };
      press.tags.add(parent, 'P', () => drawLines(press.typesetter, lines, style, frame));
    },
  };
}

/** Items with hanging numbers or dashes. */
export function listBoxes(
  press: Press,
  list: { ordered: boolean; items: Inline[]; style?: 'body' | 'small' },
  width: number,
  parent: Tag,
): Box[] {
  const isSmall = list.style === 'small';
  const style = isSmall ? type.small : type.body;
  const widest = press.typesetter.width(String(list.items.length), 'strong', style.size);
  const indent = Math.max(isSmall ? 9 : 15, list.ordered ? widest + 5 : 0);
  let tag: Tag | undefined;
  return list.items.map((item, index): Box => {
    const lines = breakLines(press.typesetter, item, style, width - indent);
    const label = list.ordered ? String(index + 1) : '–';
    return {
      height: lines.length * style.leading,
      before: index === 0 ? 4 : isSmall ? 1 : 2.5,
      after: index === list.items.length - 1 ? 5 : isSmall ? 1 : 2.5,
      keepWithNext: index === 0 && list.items.length > 1,
      draw: (x, y) => {
        tag ??= press.tags.open(parent, 'L');
        const entry = press.tags.open(tag, 'LI');
        const mark = {
          pieces: [{ text: label, face: 'strong' as const, x: 0 }],
          width: 0,
          endsInWord: false,
        };
        const frame = { x, y, width: indent, colour: palette.accent };
        press.tags.add(entry, 'Lbl', () => drawLines(press.typesetter, [mark], style, frame));
        const body = { x: x + indent, y, width: width - indent };
        press.tags.add(entry, 'LBody', () => drawLines(press.typesetter, lines, style, body));
      },
    };
  });
}
