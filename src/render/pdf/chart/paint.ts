import { color } from 'd3-color';
import { chartFace } from './chart-face.js';

/** A gradient between two points of the page. */
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

/** A CSS colour or a gradient. */
export type Paint = string | ChartGradient;

/** Any CSS colour as the six digits that pdfkit reads; opacity is set apart. */
function hexOf(paint: string): string {
  return color(paint)?.formatHex() ?? '#000000';
}

/** Opacity that a colour brings along. */
export function opacityOf(paint: Paint): number {
  return typeof paint === 'string' ? (color(paint)?.opacity ?? 1) : 1;
}

/** One colour for text: of a gradient its first. */
export function plainColour(paint: Paint): string {
  return hexOf(typeof paint === 'string' ? paint : (paint.stops[0]?.colour ?? '#000000'));
}

/** A paint as pdfkit takes it. */
export function pdfPaint(document: PDFKit.PDFDocument, paint: Paint): string | PDFKit.PDFGradient {
  if (typeof paint === 'string') return hexOf(paint);
  const gradient = document.linearGradient(...paint.from, ...paint.to);
  for (const { offset, colour } of paint.stops) gradient.stop(offset, hexOf(colour));
  return gradient;
}

/** Face and size from a CSS font: `italic 600 8px Source Sans 3`. */
export function fontOf(font: string) {
  const size = Number(/([\d.]+)px/.exec(font)?.[1] ?? 10);
  const weight = /\b(bold|[1-9]00)\b/.exec(font.split('px')[0]!)?.[1];
  return { size, face: chartFace(weight, /\bitalic\b/.test(font) ? 'italic' : undefined) };
}
