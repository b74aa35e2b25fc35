import { color } from 'd3-color';
import type { Typesetter } from '../typesetter.js';
import { apply, compose, type Matrix, scaleOf } from './matrix.js';
import { Path } from './path.js';
import { chartFace } from './prepare-chart.js';

/** A gradient between two points of the chart. */
export class ChartGradient {
  readonly stops: { offset: number; colour: string }[] = [];

  constructor(
    readonly from: [x: number, y: number],
    readonly to: [x: number, y: number],
  ) {}

  addColorStop(offset: number, colour: string): void {
    this.stops.push({ offset, colour });
  }
}

type Paint = string | ChartGradient;

interface State {
  matrix: Matrix;
  fillStyle: Paint;
  strokeStyle: Paint;
  globalAlpha: number;
  lineWidth: number;
  lineCap: 'butt' | 'round' | 'square';
  lineJoin: 'miter' | 'round' | 'bevel';
  miterLimit: number;
  dash: number[];
  dashOffset: number;
  font: string;
  textAlign: string;
}

const initial: Omit<State, 'matrix'> = {
  fillStyle: '#000000',
  strokeStyle: '#000000',
  globalAlpha: 1,
  lineWidth: 1,
  lineCap: 'butt',
  lineJoin: 'miter',
  miterLimit: 10,
  dash: [],
  dashOffset: 0,
  font: '10px sans-serif',
  textAlign: 'left',
};

/** PDF takes no dash of length 0. */
const shortestDash = 0.001;

/**
 * The drawing surface that vega paints on, over a page of the report. Points are mapped to the page when they
 * are added to a path, and a path outlives its filling, as on a canvas; only clips are left to the page's own stack.
 */
export class ChartContext {
  private state: State;
  private readonly stack: State[] = [];
  private path = new Path();
  /** Part of the surface that vega expects; blending is not supported. */
  globalCompositeOperation = 'source-over';
  readonly pixelRatio = 1;

  constructor(
    private readonly document: PDFKit.PDFDocument,
    private readonly typesetter: Typesetter,
    x: number,
    y: number,
  ) {
    this.state = { ...initial, matrix: [1, 0, 0, 1, x, y] };
  }

  save(): void {
    this.stack.push({ ...this.state });
    this.document.save();
  }

  restore(): void {
    const state = this.stack.pop();
    if (!state) return;
    this.state = state;
    this.document.restore();
  }

  transform(...matrix: Matrix): void {
    this.state.matrix = compose(this.state.matrix, matrix);
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
    this.path.moveTo(this.state.matrix, x, y);
  }

  lineTo(x: number, y: number): void {
    this.path.lineTo(this.state.matrix, x, y);
  }

  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.path.curveTo(this.state.matrix, x1, y1, x2, y2, x, y);
  }

  quadraticCurveTo(cx: number, cy: number, x: number, y: number): void {
    this.path.quadraticTo(this.state.matrix, cx, cy, x, y);
  }

  arc(x: number, y: number, radius: number, from: number, to: number, isBackward = false): void {
    this.path.arc(this.state.matrix, { x, y, radius }, from, to, isBackward);
  }

  rect(x: number, y: number, width: number, height: number): void {
    this.path.rect(this.state.matrix, x, y, width, height);
  }

  closePath(): void {
    this.path.close();
  }

  clip(): void {
    this.trace();
    this.document.clip();
  }

  fill(): void {
    this.painted(() => {
      this.document
        .fillColor(...this.paint(this.state.fillStyle))
        .fillOpacity(this.alpha(this.state.fillStyle));
      this.trace();
      this.document.fill();
    });
  }

  stroke(): void {
    const { lineWidth, lineCap, lineJoin, miterLimit, dash, dashOffset, matrix } = this.state;
    const scale = scaleOf(matrix);
    if (lineWidth * scale <= 0) return;
    this.painted(() => {
      const pen = this.document
        .lineWidth(lineWidth * scale)
        .lineCap(lineCap)
        .lineJoin(lineJoin);
      pen.miterLimit(miterLimit);
      const lengths = dash.map((length) => Math.max(length * scale, shortestDash));
      // A dash without gaps is a plain line; vega writes it for the first of several dashes.
      if (dash.some((length, index) => index % 2 === 1 && length > 0)) {
        this.document.dash(lengths as unknown as number, { phase: dashOffset * scale });
      }
      const { strokeStyle } = this.state;
      this.document.strokeColor(...this.paint(strokeStyle)).strokeOpacity(this.alpha(strokeStyle));
      this.trace();
      this.document.stroke();
    });
  }

  fillRect(x: number, y: number, width: number, height: number): void {
    const kept = this.path;
    this.beginPath();
    this.rect(x, y, width, height);
    this.fill();
    this.path = kept;
  }

  clearRect(): void {
    // Paper is clear already.
  }

  setLineDash(lengths: number[]): void {
    this.state.dash = lengths.length % 2 === 1 ? [...lengths, ...lengths] : [...lengths];
  }

  measureText(text: string): { width: number } {
    const { face, size } = fontOf(this.state.font);
    return { width: this.typesetter.width(text, face, size) };
  }

  fillText(text: string, x: number, y: number): void {
    const { face, size } = fontOf(this.state.font);
    const width = this.typesetter.width(text, face, size);
    const { textAlign, matrix, fillStyle } = this.state;
    const shift =
      textAlign === 'center' ? width / 2 : textAlign === 'right' || textAlign === 'end' ? width : 0;
    this.painted(() => {
      this.document.transform(...(matrix as [number, number, number, number, number, number]));
      this.document.fillOpacity(this.alpha(fillStyle));
      const colour =
        typeof fillStyle === 'string' ? hexOf(fillStyle) : hexOf(fillStyle.stops[0]?.colour ?? '#000');
      this.typesetter.write(text, x - shift, y, { face, size, colour });
    });
  }

  strokeText(): void {
    // Outlined text is a halo on screens; paper does without.
  }

  createLinearGradient(x1: number, y1: number, x2: number, y2: number): ChartGradient {
    const { matrix } = this.state;
    return new ChartGradient(apply(matrix, x1, y1), apply(matrix, x2, y2));
  }

  createRadialGradient(x1: number, y1: number, _r1: number, x2: number, y2: number): ChartGradient {
    return this.createLinearGradient(x1, y1, x2, y2);
  }

  get fillStyle(): Paint {
    return this.state.fillStyle;
  }
  set fillStyle(paint: Paint) {
    this.state.fillStyle = paint;
  }
  get strokeStyle(): Paint {
    return this.state.strokeStyle;
  }
  set strokeStyle(paint: Paint) {
    this.state.strokeStyle = paint;
  }
  set globalAlpha(alpha: number) {
    this.state.globalAlpha = alpha;
  }
  set lineWidth(width: number) {
    this.state.lineWidth = width;
  }
  set lineCap(cap: State['lineCap']) {
    this.state.lineCap = cap;
  }
  set lineJoin(join: State['lineJoin']) {
    this.state.lineJoin = join;
  }
  set miterLimit(limit: number) {
    this.state.miterLimit = limit;
  }
  set lineDashOffset(offset: number) {
    this.state.dashOffset = offset;
  }
  set font(font: string) {
    this.state.font = font;
  }
  set textAlign(align: string) {
    this.state.textAlign = align;
  }

  private painted(draw: () => void): void {
    this.document.save();
    draw();
    this.document.restore();
  }

  private trace(): void {
    for (const step of this.path.steps) {
      if (step.kind === 'move') this.document.moveTo(...step.to);
      else if (step.kind === 'line') this.document.lineTo(...step.to);
      else if (step.kind === 'close') this.document.closePath();
      else this.document.bezierCurveTo(...step.control[0], ...step.control[1], ...step.to);
    }
  }

  private paint(paint: Paint): [string | PDFKit.PDFGradient] {
    if (typeof paint === 'string') return [hexOf(paint)];
    const gradient = this.document.linearGradient(...paint.from, ...paint.to);
    for (const { offset, colour } of paint.stops) gradient.stop(offset, hexOf(colour));
    return [gradient];
  }

  private alpha(paint: Paint): number {
    return this.state.globalAlpha * (typeof paint === 'string' ? (color(paint)?.opacity ?? 1) : 1);
  }
}

/** Any CSS colour as the six digits that pdfkit reads; opacity is set apart. */
function hexOf(paint: string): string {
  return color(paint)?.formatHex() ?? '#000000';
}

/** Face and size from a CSS font: `italic 600 8px Source Sans 3`. */
function fontOf(font: string) {
  const size = Number(/([\d.]+)px/.exec(font)?.[1] ?? 10);
  const weight = /\b(bold|[1-9]00)\b/.exec(font.split('px')[0]!)?.[1];
  return { size, face: chartFace(weight, /\bitalic\b/.test(font) ? 'italic' : undefined) };
}
