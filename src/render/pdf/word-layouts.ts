interface GlyphRun {
  glyphs: unknown[];
  positions: unknown[];
  advanceWidth: number;
}

/** What pdfkit asks of a font for every word; not in its types. */
export interface WordFont {
  layoutRun(text: string, features?: Record<string, boolean>): GlyphRun;
  layoutCached(text: string): GlyphRun;
}

/** Signs that stand apart from their neighbours in the report's fonts: no kerning, no ligatures among them. */
const unkerned = /^[\d.,:+%−–=±]+$/;

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
 * Makes a font lay out every word once: pdfkit keeps `word` and `word ` apart and shapes each figure anew, which
 * is half the time of a report. Figures are put together from single signs, spaces added behind words.
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
    if (text.length > 1 && text.endsWith(' ')) return joined([layout(text.slice(0, -1)), layout(' ')]);
    if (text.length > 1 && unkerned.test(text)) return joined([...text].map(layout));
    return composed.test(text) ? font.layoutRun(text) : font.layoutRun(text, kerningOnly);
  };
  font.layoutCached = layout;
}

function joined(runs: GlyphRun[]): GlyphRun {
  return {
    glyphs: runs.flatMap((run) => run.glyphs),
    positions: runs.flatMap((run) => run.positions),
    advanceWidth: runs.reduce((sum, run) => sum + run.advanceWidth, 0),
  };
}
