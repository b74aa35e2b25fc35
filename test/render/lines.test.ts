import { beforeAll, describe, expect, it } from 'vitest';
import { ArchivalDocument } from '../../src/render/pdf/archival-document.js';
import { distribute } from '../../src/render/pdf/blocks/column-widths.js';
import { loadFonts } from '../../src/render/pdf/index.js';
import { breakLines } from '../../src/render/pdf/lines.js';
import { type } from '../../src/render/pdf/style.js';
import { Typesetter } from '../../src/render/pdf/typesetter.js';

let typesetter: Typesetter;
beforeAll(async () => {
  typesetter = new Typesetter(new ArchivalDocument({ font: '' }), await loadFonts());
});

const texts = (text: string, width: number): string[] =>
  breakLines(typesetter, [{ text }], type.body, width).map((line) =>
    line.pieces.map((piece) => piece.text).join(''),
  );

describe('running text', () => {
  it('breaks between words and fills no line beyond its width', () => {
    const lines = breakLines(
      typesetter,
      [{ text: 'a few words that run over lines '.repeat(20) }],
      type.body,
      120,
    );
    expect(lines.length).toBeGreaterThan(5);
    expect(Math.max(...lines.map((line) => line.width))).toBeLessThanOrEqual(120.01);
  });

  it('keeps a number and its unit on one line', () => {
    const width = typesetter.width('It runs for 120', 'regular', type.body.size) + 4;
    expect(texts('It runs for 120 min today', width)).toEqual(['It runs for', '120\u00a0min today']);
  });

  it('breaks a word that is wider than the line, after a hyphen where there is one, and loses no sign', () => {
    const word = 'x'.repeat(60);
    expect(texts(word, 60).join('')).toBe(word);
    expect(texts('left-right-left-right', 50)[0]).toMatch(/-$/);
  });

  it('keeps words of different emphasis together when no space parts them', () => {
    const [line] = breakLines(
      typesetter,
      [{ text: 'bold', strong: true }, { text: ', then' }],
      type.body,
      300,
    );
    expect(line!.pieces.map((piece) => piece.text)).toEqual(['bold', ', then']);
    expect(line!.pieces[1]!.x).toBeCloseTo(typesetter.width('bold', 'strong', type.body.size), 6);
  });

  it('takes no line for no text', () => {
    expect(texts('', 100)).toEqual([]);
  });
});

describe('widths', () => {
  it('of columns follow the shares', () => {
    expect(distribute(100, [1, 3], [0, 0])).toEqual([25, 75]);
  });

  it('of columns give the widest word its room at the cost of the others', () => {
    const [narrow, wide] = distribute(100, [1, 3], [40, 10]);
    expect(narrow).toBe(40);
    expect(wide).toBe(60);
  });

  it('of columns add up to the whole also when nothing fits', () => {
    const widths = distribute(100, [1, 1], [90, 90]);
    expect(widths[0]! + widths[1]!).toBeCloseTo(100, 9);
  });

  it('of figures are those of their single signs: digits do not kern', () => {
    const sum = [...'1471'].reduce((width, sign) => width + typesetter.width(sign, 'regular', 8), 0);
    expect(typesetter.width('1471', 'regular', 8)).toBeCloseTo(sum, 9);
  });
});
