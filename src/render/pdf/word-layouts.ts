interface GlyphRun {
  glyphs: unknown[];
  positions: { xAdvance: number }[];
  advanceWidth: number;
}

/** What pdfkit asks of a font for every word; not in its types. */
export interface WordFont {
  layoutRun(text: string, features?: Record<string, boolean>): GlyphRun;
  layoutCached(text: string): GlyphRun;
}

/** Pairs of signs that are not kerned in the report's fonts: among figures, and before a space. */
const apart = /^[\d.,:+%−–=±]{2}$| $/;

/** Scripts and marks that need everything the font knows about composing signs. */
const composed = /[\p{M}\u0590-\u0fff\u1000-\u1fff]/u;

/** Ligatures spoil copied text, and looking for them takes time: plain words are only kerned. */
const kerningOnly = Object.fromEntries(
  ['calt', 'liga', 'clig', 'rclt', 'curs', 'ccmp', 'locl', 'rlig', 'mark', 'mkmk'].map((name) => [
    name,
    false,
  ]),
);

/**
 * Makes a font lay out every pair of neighbouring signs once, and words from those: pdfkit keeps `word` and `word `
 * apart and shapes each word anew, which is half the time of a report. Kerning moves a sign by what follows it and by
 * nothing else, so pairs are all there is to know.
 */
export function shareWordLayouts(font: WordFont): void {
  const known = new Map<string, GlyphRun>();
  const layout = (text: string): GlyphRun => {
    let run = known.get(text);
    if (!run) {
      run = compose(text);
      known.set(text, run);
    }
    return run;
  };
  const compose = (text: string): GlyphRun => {
    if (composed.test(text)) return font.layoutRun(text);
    const signs = [...text];
    if (signs.length === 1 || (signs.length === 2 && !apart.test(text)))
      return font.layoutRun(text, kerningOnly);
    const pairs = signs.map((sign, index) => sign + (signs[index + 1] ?? ''));
    return ofPairs(pairs.map((pair, index) => layout(apart.test(pair) ? signs[index]! : pair)));
  };
  font.layoutCached = layout;
}

/** @param pairs each sign with the one that follows it, the last alone */
function ofPairs(pairs: GlyphRun[]): GlyphRun {
  const positions = pairs.map((pair) => pair.positions[0]!);
  let advanceWidth = 0;
  for (const { xAdvance } of positions) advanceWidth += xAdvance;
  return { glyphs: pairs.map((pair) => pair.glyphs[0]!), positions, advanceWidth };
}
