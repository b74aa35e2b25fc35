import PDFDocument from 'pdfkit';
import { expect, it } from 'vitest';
import { loadFonts } from '../../src/render/pdf/fonts.js';
import { shareWordLayouts, type WordFont } from '../../src/render/pdf/word-layouts.js';
import { projectFiles, textOf } from '../house/project.js';

/** Kerned as a line of the font's own would be; ligatures would spoil text that is copied. */
const kerningOnly = Object.fromEntries(
  ['calt', 'liga', 'clig', 'rclt', 'curs', 'ccmp', 'locl', 'rlig', 'mark', 'mkmk'].map((name) => [
    name,
    false,
  ]),
);

/** Every word of the wording, and pairs that fonts like to kern. */
function words(): string[] {
  const wording = projectFiles.filter((path) => /^templates\/.*\.(md|csv)$/.test(path)).map(textOf);
  const known = new Set(wording.join(' ').split(/\s+/).filter(Boolean));
  const letters = [...'AVWTYLPFKRaovwyftr.,-/’1470%'];
  for (const first of letters) for (const second of letters) known.add(`${first}${second}${first}`);
  for (const figure of ['1,234.5', '11:47', '±0.05', '−7 ', 'Tv ', 'Ωm', 'µ=0.1']) known.add(figure);
  return [...known];
}

it.each(['regular', 'strong', 'emphasis', 'fallback'] as const)(
  'words made of pairs stand as the font sets them whole: %s',
  async (face) => {
    const document = new PDFDocument();
    document.registerFont(face, (await loadFonts())[face] as unknown as ArrayBuffer);
    document.font(face);
    const font = (document as unknown as { _font: WordFont & { scale: number } })._font;
    shareWordLayouts(font);
    const unlike = words().filter((word) => {
      const [made, whole] = [font.layoutCached(word), font.layoutRun(word, kerningOnly)];
      const advances = (run: typeof made) => run.positions.map(({ xAdvance }) => xAdvance);
      return JSON.stringify(advances(made)) !== JSON.stringify(advances(whole));
    });
    expect(unlike).toEqual([]);
  },
);
