let segmenter: Intl.Segmenter | undefined;

/** What a reader sees as one sign each. Looking for them takes time, so nobody does before a text needs it. */
function signsOf(text: string): Intl.Segments {
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return segmenter.segment(text);
}

/** Texts in which every character is one sign of one column. */
const plain = /^[ -~]*$/;

/** Signs that take two columns on a terminal: East Asian wide forms and pictures. */
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|[\u{20000}-\u{3fffd}]/u;

const weightless = /^[\p{Mn}\p{Me}\p{Cf}]+$/u;

function signWidth(sign: string): number {
  if (weightless.test(sign)) return 0;
  return wide.test(sign) ? 2 : 1;
}

/** Columns that a text takes on a terminal; what a reader sees as one sign counts once. */
export function displayWidth(text: string): number {
  if (plain.test(text)) return text.length;
  let width = 0;
  for (const { segment } of signsOf(text)) width += signWidth(segment);
  return width;
}

/** The text in exactly so many columns: filled with spaces, or cut with an ellipsis. */
export function fitted(text: string, columns: number, align: 'left' | 'right' = 'left'): string {
  const shown = displayWidth(text) <= columns ? text : `${cut(text, columns - 1)}…`;
  const space = ' '.repeat(Math.max(0, columns - displayWidth(shown)));
  return align === 'left' ? shown + space : space + shown;
}

/** Breaks a text between words so that no line takes more than so many columns; longer words are cut. */
export function wrapped(text: string, columns: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ').flatMap((whole) => pieces(whole, columns))) {
    const last = lines.at(-1);
    if (last !== undefined && displayWidth(last) + 1 + displayWidth(word) <= columns) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}

function pieces(word: string, columns: number): string[] {
  const found: string[] = [];
  let rest = word;
  while (displayWidth(rest) > columns) {
    const piece = cut(rest, columns);
    if (piece === '') break;
    found.push(piece);
    rest = rest.slice(piece.length);
  }
  return [...found, rest];
}

function cut(text: string, columns: number): string {
  let [shown, width] = ['', 0];
  for (const { segment } of signsOf(text)) {
    width += signWidth(segment);
    if (width > columns) break;
    shown += segment;
  }
  return shown;
}
