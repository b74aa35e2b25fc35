import type { CautionBlock, Inline } from '../../../report/document.js';
import type { Box, Press } from '../box.js';
import { breakLines, drawLines, type Line } from '../lines.js';
import { cautionColours, type TextStyle, type } from '../style.js';
import type { Tag } from '../tags.js';

const pad = { x: 9, y: 4, bar: 4 };

/** Below this width the figure stands above the text, not beside it. */
const narrow = 320;

const textStyle: TextStyle = { ...type.table, leading: 10.8, size: 8.4 };

interface Part {
  lines: Line[];
  style: TextStyle;
  x: number;
  y: number;
  width: number;
}

/** A caution: its severity in a word, the figure that raised it, what it means and what to do. */
export function cautionBox(press: Press, caution: CautionBlock, width: number, parent: Tag): Box {
  const colours = cautionColours[caution.severity];
  const { parts, height } =
    width < narrow ? layNarrow(press, caution, width) : layWide(press, caution, width);
  const draw = (x: number, y: number): void => {
    press.tags.artifact('Layout', () => {
      press.document.rect(x, y, width, height).fill(colours.band);
      press.document.rect(x, y, pad.bar, height).fill(colours.bar);
    });
    const tag = press.tags.open(parent, 'Div');
    for (const part of parts.filter(({ lines }) => lines.length > 0)) {
      const frame = { x: x + part.x, y: y + part.y, width: part.width };
      press.tags.add(tag, 'P', () => drawLines(press.typesetter, part.lines, part.style, frame));
    }
  };
  return { height, before: 3.5, after: 3.5, keepWithNext: false, draw };
}

/** Severity and figure in a column of their own, text and action beside them. */
function layWide(press: Press, caution: CautionBlock, width: number) {
  const side = 92;
  const left = { x: pad.bar + pad.x, width: side };
  const right = { x: left.x + side + pad.x, width: width - pad.bar - 3 * pad.x - side };
  const { word, figure, text, action } = styled(caution);
  const first = stack(press, [word, figure], left);
  const second = stack(press, [text, action], right);
  return { parts: [...first.parts, ...second.parts], height: Math.max(first.bottom, second.bottom) + pad.y };
}

/** Everything under each other, severity and figure on one line. */
function layNarrow(press: Press, caution: CautionBlock, width: number) {
  const { word, figure, text, action } = styled(caution);
  const line: Styled = { text: [...word.text, { text: '  ' }, ...figure.text], style: word.style };
  const frame = { x: pad.bar + pad.x, width: width - pad.bar - 2 * pad.x };
  const { parts, bottom } = stack(press, [line, text, action], frame);
  return { parts, height: bottom + pad.y };
}

interface Styled {
  text: Inline;
  style: TextStyle;
}

function styled(caution: CautionBlock): Record<'word' | 'figure' | 'text' | 'action', Styled> {
  const colour = cautionColours[caution.severity].word;
  const about: Inline = caution.about === '' ? [] : [{ text: `${caution.about}: `, strong: true }];
  return {
    word: { text: [{ text: caution.label }], style: { ...type.small, face: 'strong', colour } },
    figure: {
      text: caution.figure === '' ? [] : [{ text: caution.figure }],
      style: { ...type.subheading, colour },
    },
    text: { text: [...about, ...caution.text], style: textStyle },
    action: {
      text: caution.action.length === 0 ? [] : [{ text: '→ ' }, ...caution.action],
      style: textStyle,
    },
  };
}

function stack(
  press: Press,
  texts: Styled[],
  frame: { x: number; width: number },
): { parts: Part[]; bottom: number } {
  let bottom = pad.y;
  const parts = texts.map(({ text, style }): Part => {
    const lines = breakLines(press.typesetter, text, style, frame.width);
    const part = { lines, style, ...frame, y: bottom };
    bottom += lines.length * style.leading;
    return part;
  });
  return { parts, bottom };
}
