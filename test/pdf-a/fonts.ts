import {
  contentOf,
  dictionaryAt,
  entry,
  listAt,
  type OpenPage,
  type OpenPdf,
  PDFArray,
  PDFDict,
  PDFNumber,
} from './open-pdf.js';
import { type Mark, marked } from './operations.js';

/** A font of a file and the codes that its pages write with it. */
export interface UsedFont {
  name: string;
  dictionary: PDFDict;
  descendant: PDFDict | undefined;
  /** Two bytes each. */
  codes: Set<number>;
}

/** Every font that a page writes with. */
export function usedFonts({ pages }: OpenPdf): UsedFont[] {
  const fonts = new Map<PDFDict, UsedFont>();
  for (const { dictionary, operations } of pages) {
    const resources = dictionaryAt(dictionaryAt(dictionary, 'Resources'), 'Font');
    let font: UsedFont | undefined;
    for (const { operator, operands } of operations) {
      if (operator === 'Tf') font = fontAt(resources, operands[0]!.slice(1), fonts);
      if (operator === 'Tj' || operator === 'TJ') for (const code of codesIn(operands)) font?.codes.add(code);
    }
  }
  return [...fonts.values()];
}

function fontAt(
  resources: PDFDict | undefined,
  name: string,
  fonts: Map<PDFDict, UsedFont>,
): UsedFont | undefined {
  const dictionary = dictionaryAt(resources, name);
  if (dictionary === undefined) return undefined;
  const [descendant] = listAt(dictionary, 'DescendantFonts').filter((object) => object instanceof PDFDict);
  const font = fonts.get(dictionary) ?? { name, dictionary, descendant, codes: new Set<number>() };
  fonts.set(dictionary, font);
  return font;
}

/** Unicode text for each code, from the font's own map. */
export function unicodeOf({ dictionary }: UsedFont): Map<number, string> {
  const map = new Map<number, string>();
  const text = contentOf(entry(dictionary, 'ToUnicode'));
  for (const [, first, , list] of text.matchAll(/<([0-9a-f]+)> <([0-9a-f]+)> \[([^\]]*)\]/gi)) {
    [...list!.matchAll(/<([0-9a-f ]*)>/gi)].forEach(([, hex], index) => {
      const units = hex!.replaceAll(' ', '').match(/.{4}/g) ?? [];
      map.set(
        Number.parseInt(first!, 16) + index,
        String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16))),
      );
    });
  }
  return map;
}

/** Text that was written at once, and what it stands in. */
export interface Stretch {
  text: string;
  marks: Mark[];
}

/** The text of a page in the order in which it was written. */
export function stretchesOf(pdf: OpenPdf, page: OpenPage): Stretch[] {
  const letters = new Map(usedFonts(pdf).map((font) => [font.name, unicodeOf(font)]));
  let font = new Map<number, string>();
  return marked(page.operations).flatMap(({ operation: { operator, operands }, marks }) => {
    if (operator === 'Tf') font = letters.get(operands[0]!.slice(1)) ?? new Map();
    if (operator !== 'TJ') return [];
    return [
      {
        text: codesIn(operands)
          .map((code) => font.get(code) ?? '?')
          .join(''),
        marks,
      },
    ];
  });
}

function codesIn(operands: string[]): number[] {
  const digits = [...operands.join(' ').matchAll(/<([0-9a-fA-F]*)>/g)].map(([, hex]) => hex).join('');
  return (digits.match(/.{4}/g) ?? []).map((code) => Number.parseInt(code, 16));
}

/** Width of each code in thousandths, as the font dictionary says. */
export function statedWidths({ descendant }: UsedFont): Map<number, number> {
  const widths = new Map<number, number>();
  const list = listAt(descendant, 'W');
  for (let index = 0; index + 1 < list.length; index += 2) {
    const [first, run] = [list[index], list[index + 1]];
    if (!(first instanceof PDFNumber) || !(run instanceof PDFArray))
      throw new Error('W in a form not known here');
    run.asArray().forEach((width, place) => {
      widths.set(first.asNumber() + place, Number(String(width)));
    });
  }
  return widths;
}

/** Width of each glyph in thousandths, as the embedded TrueType program says. */
export function embeddedWidths({ descendant }: UsedFont): number[] {
  const program = Buffer.from(
    contentOf(entry(dictionaryAt(descendant, 'FontDescriptor'), 'FontFile2')),
    'latin1',
  );
  if (program.length === 0) return [];
  const tables = new Map<string, number>();
  const count = program.readUInt16BE(4);
  for (let index = 0; index < count; index++) {
    const at = 12 + 16 * index;
    tables.set(program.toString('latin1', at, at + 4), program.readUInt32BE(at + 8));
  }
  const unitsPerEm = program.readUInt16BE(tables.get('head')! + 18);
  const metrics = program.readUInt16BE(tables.get('hhea')! + 34);
  const glyphs = program.readUInt16BE(tables.get('maxp')! + 4);
  // After the last full entry all glyphs are as wide as it.
  const advance = (glyph: number) =>
    program.readUInt16BE(tables.get('hmtx')! + 4 * Math.min(glyph, metrics - 1));
  return Array.from({ length: glyphs }, (_, glyph) => (advance(glyph) * 1000) / unitsPerEm);
}
