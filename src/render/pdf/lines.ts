import { keptWithUnits } from '../../quantity/unbroken.js';
import type { Inline, Span } from '../../report/document.js';
import { type Face, palette, type TextStyle } from './style.js';
import type { Typesetter } from './typesetter.js';

/** Words of one face that stand together on a line. */
interface Piece {
  text: string;
  face: Face;
  x: number;
}

/** A line of text as broken; widths and places in points from its left end. */
export interface Line {
  pieces: Piece[];
  width: number;
  /** The line ends inside a word that was too long for it. */
  endsInWord: boolean;
}

interface Word {
  parts: { text: string; face: Face; width: number }[];
  width: number;
  /** Continues the word before it, which was too long for a line. */
  continues?: boolean;
  /** Stands at the head of a line. */
  startsLine?: boolean;
}

/**
 * Breaks running text into lines. Only plain spaces part words; a word wider than the line is broken where it must,
 * and a line feed begins a new line.
 *
 * @param width in points
 */
export function breakLines(typesetter: Typesetter, text: Inline, style: TextStyle, width: number): Line[] {
  const words = wordsOf(typesetter, text, style).flatMap((word) => fitting(typesetter, word, style, width));
  const space = typesetter.width(' ', style.face, style.size);
  const lines: Word[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const word of words) {
    if (word.startsLine || used + space + word.width > width + 0.01) {
      lines.push([word]);
      used = word.width;
    } else {
      lines.at(-1)!.push(word);
      used += space + word.width;
    }
  }
  return lines.map((line, index) => ({
    ...assemble(typesetter, line, style),
    endsInWord: lines[index + 1]?.[0]?.continues ?? false,
  }));
}

/** Draws lines from the top of the first; returns the height. */
export function drawLines(
  typesetter: Typesetter,
  lines: Line[],
  style: TextStyle,
  frame: { x: number; y: number; width: number; align?: 'left' | 'right' | 'centre'; colour?: string },
): number {
  lines.forEach((line, index) => {
    const free = frame.width - line.width;
    const indent = frame.align === 'right' ? free : frame.align === 'centre' ? free / 2 : 0;
    const baseline = frame.y + index * style.leading + style.leading / 2 + style.size * 0.33;
    // A space ends every line, so that its last word and the next stay two when the text is copied or read out.
    const end = line.endsInWord ? '' : ' ';
    line.pieces.forEach(({ text, face, x }, place) => {
      const isLast = place === line.pieces.length - 1;
      const stands = face === 'strong' && style.face !== 'strong' && style.colour === palette.muted;
      const how = { face, size: style.size, colour: stands ? palette.ink : (frame.colour ?? style.colour) };
      typesetter.write(isLast ? text + end : text, frame.x + indent + x, baseline, how);
    });
  });
  return lines.length * style.leading;
}

/** Widest word of a text: the least width it can be set in without breaking one. */
export function widestWord(typesetter: Typesetter, text: Inline, style: TextStyle): number {
  return Math.max(0, ...wordsOf(typesetter, text, style).map((word) => word.width));
}

function faceOf(span: Span, style: Pick<TextStyle, 'face'>): Face {
  if (span.strong || span.code) return 'strong';
  return span.emphasis ? 'emphasis' : style.face;
}

/** Words of texts as measured last: a table asks for them twice, for its widths and for its lines. */
const measured = new WeakMap<Inline, { typesetter: Typesetter; face: Face; size: number; words: Word[] }>();

function wordsOf(typesetter: Typesetter, text: Inline, { face, size }: TextStyle): Word[] {
  const known = measured.get(text);
  if (known?.typesetter === typesetter && known.face === face && known.size === size) return known.words;
  const words = splitWords(typesetter, text, { face, size });
  measured.set(text, { typesetter, face, size, words });
  return words;
}

function splitWords(typesetter: Typesetter, text: Inline, style: Pick<TextStyle, 'face' | 'size'>): Word[] {
  const words: Word[] = [];
  let isOpen = false;
  for (const span of text) {
    const face = faceOf(span, style);
    keptWithUnits(span.text)
      .split(/(?=\n)| /)
      .forEach((piece, index) => {
        const part = piece.replace('\n', '');
        const startsLine = part !== piece;
        if (index > 0 || startsLine) isOpen = false;
        if (part === '') return;
        if (!isOpen) words.push({ parts: [], width: 0, ...(startsLine ? { startsLine } : {}) });
        isOpen = true;
        const width = typesetter.width(part, face, style.size);
        const word = words.at(-1)!;
        word.parts.push({ text: part, face, width });
        word.width += width;
      });
  }
  return words;
}

/** A word that is wider than the line comes in pieces, broken after a hyphen or slash where there is one. */
function fitting(typesetter: Typesetter, word: Word, style: TextStyle, width: number): Word[] {
  if (word.width <= width + 0.01) return [word];
  const pieces: Word[] = [];
  for (const part of word.parts) {
    let rest = [...part.text];
    while (rest.length > 0) {
      let count = rest.length;
      while (count > 1 && typesetter.width(rest.slice(0, count).join(''), part.face, style.size) > width)
        count--;
      const natural = rest.slice(0, count).findLastIndex((sign) => '-/_,.'.includes(sign));
      if (count < rest.length && natural > count / 2) count = natural + 1;
      const text = rest.slice(0, count).join('');
      const pieceWidth = typesetter.width(text, part.face, style.size);
      const place = pieces.length > 0 ? { continues: true } : { startsLine: word.startsLine ?? false };
      pieces.push({ parts: [{ text, face: part.face, width: pieceWidth }], width: pieceWidth, ...place });
      rest = rest.slice(count);
    }
  }
  return pieces;
}

/** Joins neighbouring words of one face into one piece, so that text stays text when it is copied. */
function assemble(typesetter: Typesetter, words: Word[], style: TextStyle): Omit<Line, 'endsInWord'> {
  const pieces: Piece[] = [];
  let isFirst = true;
  for (const word of words) {
    word.parts.forEach((part, index) => {
      const lead = index === 0 && !isFirst ? ' ' : '';
      const last = pieces.at(-1);
      if (last?.face === part.face) last.text += lead + part.text;
      else {
        if (last) last.text += lead;
        pieces.push({ text: part.text, face: part.face, x: 0 });
      }
    });
    isFirst = false;
  }
  let x = 0;
  for (const piece of pieces) {
    piece.x = x;
    x += typesetter.width(piece.text, piece.face, style.size);
  }
  return { pieces, width: x };
}
