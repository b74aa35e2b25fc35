import { embeddedWidths, statedWidths, type UsedFont, unicodeOf, usedFonts } from './fonts.js';
import { dictionaryAt, entry, textAt } from './open-pdf.js';
import { type Rule, unless } from './rule.js';

/** Faults of every font, each with its name. */
const inFonts = (faults: (font: UsedFont) => string[]): Rule['faults'] => {
  return (pdf) => usedFonts(pdf).flatMap((font) => faults(font).map((fault) => `${font.name}: ${fault}`));
};

/** Fonts are inside, whole enough, and say which letters they draw. */
export const fontRules: Rule[] = [
  {
    id: 'embedded',
    clause: '19005-3, 6.2.11.4',
    demands: 'fonts are embedded as subsets with a name of their own',
    faults: inFonts(({ dictionary, descendant }) => [
      ...unless(textAt(dictionary, 'Subtype') === 'Type0', 'no composite font'),
      ...unless(entry(dictionaryAt(descendant, 'FontDescriptor'), 'FontFile2') !== undefined, 'not embedded'),
      ...unless(/^[A-Z]{6}\+/.test(textAt(dictionary, 'BaseFont')), 'no subset name'),
      ...unless(textAt(dictionary, 'BaseFont') === textAt(descendant, 'BaseFont'), 'two names'),
    ]),
  },
  {
    id: 'glyph-numbers',
    clause: '19005-3, 6.2.11.3',
    demands: 'codes are glyph numbers, and the font says so',
    faults: inFonts(({ dictionary, descendant }) => [
      ...unless(textAt(dictionary, 'Encoding') === 'Identity-H', 'another encoding'),
      ...unless(textAt(descendant, 'CIDToGIDMap') === 'Identity', 'no CIDToGIDMap'),
      ...unless(
        textAt(dictionaryAt(descendant, 'CIDSystemInfo'), 'Ordering') === 'Identity',
        'another ordering',
      ),
    ]),
  },
  {
    id: 'widths',
    clause: '19005-3, 6.2.11.5',
    demands: 'stated widths are those of the embedded font',
    faults: inFonts((font) => {
      const [stated, embedded] = [statedWidths(font), embeddedWidths(font)];
      const isWrong = (code: number) =>
        !(Math.abs((stated.get(code) ?? 1000) - (embedded[code] ?? Number.NaN)) <= 1);
      return [...font.codes]
        .filter(isWrong)
        .map((code) => `glyph ${code}: ${stated.get(code)} for ${embedded[code]}`);
    }),
  },
  {
    id: 'unicode',
    clause: '19005-3, 6.2.11.7.2',
    demands: 'every code has its letters, and none of them is forbidden',
    faults: inFonts((font) => {
      const letters = unicodeOf(font);
      return [...font.codes]
        .filter((code) => !/^[^\0\ufeff\ufffe]+$/.test(letters.get(code) ?? ''))
        .map((code) => `glyph ${code} has no letter`);
    }),
  },
  {
    id: 'no-empty-glyph',
    clause: '19005-3, 6.2.11.8',
    demands: 'the glyph for what a font lacks is never drawn',
    faults: inFonts(({ codes }) => unless(!codes.has(0), '.notdef is drawn')),
  },
];
