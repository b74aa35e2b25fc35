import type { FontBytes } from './fonts.js';
import { showRun, type WritableFont } from './show-run.js';
import type { Face } from './style.js';
import { shareWordLayouts, type WordFont } from './word-layouts.js';

/** A stretch of text that one font can set. */
export interface Run {
  text: string;
  font: keyof FontBytes;
}

/** A text split into runs, with its width at a size of one point. */
interface Measured {
  runs: Run[];
  width: number;
}

/** What the typesetter needs of a pdfkit font; not in pdfkit's types. */
interface EmbeddedFace extends WordFont, WritableFont {
  font: { hasGlyphForCodePoint(codePoint: number): boolean };
  widthOfString(text: string, size: number): number;
}

/** Stands for a sign that no font has. */
const substitute = '□';

/** Chooses fonts sign by sign, measures, and writes; keeps account of signs that no font has. */
export class Typesetter {
  private readonly faces = new Map<keyof FontBytes, EmbeddedFace>();
  private readonly known: Record<Face, Map<string, Measured>> = {
    regular: new Map(),
    strong: new Map(),
    emphasis: new Map(),
  };
  private readonly fontsOf: Record<Face, Map<string, keyof FontBytes | null>> = {
    regular: new Map(),
    strong: new Map(),
    emphasis: new Map(),
  };
  private readonly missing = new Map<string, string>();

  constructor(
    private readonly document: PDFKit.PDFDocument,
    private readonly fonts: FontBytes,
  ) {}

  /** Signs that no font has, each with a text it stood in. */
  missingCharacters(): { character: string; context: string }[] {
    return [...this.missing].map(([character, context]) => ({ character, context }));
  }

  /** Width of a text in points. */
  width(text: string, face: Face, size: number): number {
    return this.measured(text, face).width * size;
  }

  /** Writes text on a baseline; returns its width. */
  write(
    text: string,
    x: number,
    baseline: number,
    how: { face: Face; size: number; colour: string },
  ): number {
    let at = x;
    const { runs, width } = this.measured(text, how.face);
    for (const run of runs) {
      const runWidth = runs.length === 1 ? width * how.size : this.runWidth(run, how.size);
      this.document.fillColor(how.colour);
      if (!showRun(this.document, this.face(run.font), run.text, { x: at, baseline, size: how.size })) {
        this.document.font(run.font).fontSize(how.size);
        this.document.text(run.text, at, baseline, { lineBreak: false, baseline: 'alphabetic' });
      }
      at += runWidth;
    }
    return at - x;
  }

  private measured(text: string, face: Face): Measured {
    let measured = this.known[face].get(text);
    if (!measured) {
      const runs = this.split(text, face);
      measured = { runs, width: runs.reduce((sum, run) => sum + this.runWidth(run, 1), 0) };
      this.known[face].set(text, measured);
    }
    return measured;
  }

  private runWidth(run: Run, size: number): number {
    return this.face(run.font).widthOfString(run.text, size);
  }

  /** Stretches that one font can set; signs nobody has become □ and are noted. */
  private split(text: string, face: Face): Run[] {
    const runs: Run[] = [];
    const second = face === 'strong' ? 'fallbackStrong' : 'fallback';
    for (const character of text.replace(/[\u00a0\u202f\u2009]/g, ' ')) {
      const found = this.fontFor(character, face, second);
      const [font, shown] = found === null ? [face, substitute] : [found, character];
      if (shown !== character && !this.missing.has(character)) this.missing.set(character, text);
      const last = runs.at(-1);
      if (last?.font === font) last.text += shown;
      else runs.push({ text: shown, font });
    }
    return runs;
  }

  /** The font that has a sign, the face asked for if it can; null when neither has it. */
  private fontFor(character: string, face: Face, second: keyof FontBytes): keyof FontBytes | null {
    const known = this.fontsOf[face];
    let font = known.get(character);
    if (font === undefined) {
      const has = (name: keyof FontBytes) =>
        this.face(name).font.hasGlyphForCodePoint(character.codePointAt(0)!);
      font = has(face) ? face : has(second) ? second : null;
      known.set(character, font);
    }
    return font;
  }

  /** Opens a face when it is first asked for, so that unused fonts cost nothing and are not embedded. */
  private face(name: keyof FontBytes): EmbeddedFace {
    let face = this.faces.get(name);
    if (!face) {
      this.document.registerFont(name, this.fonts[name] as unknown as ArrayBuffer);
      this.document.font(name);
      face = (this.document as unknown as { _font: EmbeddedFace })._font;
      shareWordLayouts(face);
      this.faces.set(name, face);
    }
    return face;
  }
}
