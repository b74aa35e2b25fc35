import type { Typesetter } from '../typesetter.js';
import { apply, compose, type Matrix, scaleOf } from './matrix.js';
import { ChartGradient, fontOf, opacityOf, type Paint, pdfPaint, plainColour } from './paint.js';
import { Path } from './path.js';

/** What a canvas remembers with `save`. */
interface Style {
  fillStyle: Paint;
  strokeStyle: Paint;
  globalAlpha: number;
  lineWidth: number;
  lineCap: 'butt' | 'round' | 'square';
  lineJoin: 'miter' | 'round' | 'bevel';
  miterLimit: number;
  lineDashOffset: number;
  font: string;
  textAlign: string;
}

/** PDF takes no dash of length 0. */
const shortestDash = 0.001;

/**
 * The drawing surface that vega paints on, over a page of the report. Points are mapped to the page when they
 * are added to a path, and a path outlives its filling, as on a canvas; only clips are left to the page's own stack.
 */
export class ChartContext implements Style {
  fillStyle: Paint = '#000000';
  strokeStyle: Paint = '#000000';
  globalAlpha = 1;
  lineWidth = 1;
  lineCap: Style['lineCap'] = 'butt';
  lineJoin: Style['lineJoin'] = 'miter';
  miterLimit = 10;
  lineDashOffset = 0;
  font = '10px sans-serif';
  textAlign = 'left';
  /** Part of the surface that vega expects; colours are never blended. */
  globalCompositeOperation = 'source-over';
  readonly pixelRatio = 1;

  private matrix: Matrix;
  private dash: number[] = [];
  private path = new Path();
  private readonly stack: { style: Style; matrix: Matrix; dash: number[] }[] = [];

  /**
   * @param x left edge of the chart on the page
   * @param y its upper edge
   */
  constructor(
    private readonly document: PDFKit.PDFDocument,
    private readonly typesetter: Typesetter,
    x: number,
    y: number,
  ) {
    this.matrix = [1, 0, 0, 1, x, y];
  }

  save(): void {
    this.stack.push({ style: styleOf(this), matrix: this.matrix, dash: this.dash });
    this.document.save();
  }

  restore(): void {
    const saved = this.stack.pop();
    if (!saved) return;
    Object.assign(this, saved.style);
    this.matrix = saved.matrix;
    this.dash = saved.dash;
    this.document.restore();
  }

  transform(...matrix: Matrix): void {
    this.matrix = compose(this.matrix, matrix);
  }

  translate(x: number, y: number): void {
    this.transform(1, 0, 0, 1, x, y);
  }

  scale(x: number, y: number): void {
    this.transform(x, 0, 0, y, 0, 0);
  }

  rotate(angle: number): void {
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    this.transform(cosine, sine, -sine, cosine, 0, 0);
  }

  beginPath(): void {
    this.path = new Path();
  }

  moveTo(x: number, y: number): void {
    this.path.moveTo(this.matrix, x, y);
  }

  lineTo(x: number, y: number): void {
    this.path.lineTo(this.matrix, x, y);
  }

  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.path.curveTo(this.matrix, x1, y1, x2, y2, x, y);
  }

  quadraticCurveTo(cx: number, cy: number, x: number, y: number): void {
    this.path.quadraticTo(this.matrix, cx, cy, x, y);
  }

  arc(x: number, y: number, radius: number, from: number, to: number, isBackward = false): void {
    this.path.arc(this.matrix, { x, y, radius }, from, to, isBackward);
  }

  rect(x: number, y: number, width: number, height: number): void {
    this.path.rect(this.matrix, x, y, width, height);
  }

  closePath(): void {
    this.path.close();
  }

  clip(): void {
    this.trace();
    this.document.clip();
  }

  fill(): void {
    this.apart(() => {
      this.document
        .fillColor(pdfPaint(this.document, this.fillStyle))
        .fillOpacity(this.opacity(this.fillStyle));
      this.trace();
      this.document.fill();
    });
  }

  stroke(): void {
    const scale = scaleOf(this.matrix);
    if (this.lineWidth * scale <= 0) return;
    this.apart(() => {
      const { document, strokeStyle } = this;
      document
        .lineWidth(this.lineWidth * scale)
        .lineCap(this.lineCap)
        .lineJoin(this.lineJoin);
      document.miterLimit(this.miterLimit);
      // A dash without gaps is a plain line; vega writes it for the first of several dashes.
      if (this.dash.some((length, index) => index % 2 === 1 && length > 0)) {
        const lengths = this.dash.map((length) => Math.max(length * scale, shortestDash));
        document.dash(lengths as unknown as number, { phase: this.lineDashOffset * scale });
      }
      document.strokeColor(pdfPaint(document, strokeStyle)).strokeOpacity(this.opacity(strokeStyle));
      this.trace();
      document.stroke();
    });
  }

  fillRect(x: number, y: number, width: number, height: number): void {
    const kept = this.path;
    this.beginPath();
    this.rect(x, y, width, height);
    this.fill();
    this.path = kept;
  }

  /** Paper is clear already. */
  clearRect(): void {}

  setLineDash(lengths: number[]): void {
    this.dash = lengths.length % 2 === 1 ? [...lengths, ...lengths] : [...lengths];
  }

  measureText(text: string): { width: number } {
    const { face, size } = fontOf(this.font);
    return { width: this.typesetter.width(text, face, size) };
  }

  fillText(text: string, x: number, y: number): void {
    const { face, size } = fontOf(this.font);
    const { width } = this.measureText(text);
    const shift =
      this.textAlign === 'center' ? width / 2 : ['right', 'end'].includes(this.textAlign) ? width : 0;
    this.apart(() => {
      this.document.transform(...(this.matrix as [number, number, number, number, number, number]));
      this.document.fillOpacity(this.opacity(this.fillStyle));
      this.typesetter.write(text, x - shift, y, { face, size, colour: plainColour(this.fillStyle) });
    });
  }

  /** Outlined text is a halo for screens; paper does without. */
  strokeText(): void {}

  createLinearGradient(x1: number, y1: number, x2: number, y2: number): ChartGradient {
    return new ChartGradient(apply(this.matrix, x1, y1), apply(this.matrix, x2, y2));
  }

  createRadialGradient(x1: number, y1: number, _radius: number, x2: number, y2: number): ChartGradient {
    return this.createLinearGradient(x1, y1, x2, y2);
  }

  /** Draws with settings of its own, so that nothing leaks into what the page draws next. */
  private apart(draw: () => void): void {
    this.document.save();
    draw();
    this.document.restore();
  }

  private opacity(paint: Paint): number {
    return this.globalAlpha * opacityOf(paint);
  }

  private trace(): void {
    for (const step of this.path.steps) {
      if (step.kind === 'move') this.document.moveTo(...step.to);
      else if (step.kind === 'line') this.document.lineTo(...step.to);
      else if (step.kind === 'close') this.document.closePath();
      else this.document.bezierCurveTo(...step.control[0], ...step.control[1], ...step.to);
    }
  }
}

function styleOf(style: Style): Style {
  const { fillStyle, strokeStyle, globalAlpha, lineWidth, lineCap, lineJoin } = style;
  const { miterLimit, lineDashOffset, font, textAlign } = style;
  return {
    ...{ fillStyle, strokeStyle, globalAlpha, lineWidth, lineCap, lineJoin },
    miterLimit,
    lineDashOffset,
    font,
    textAlign,
  };
}
