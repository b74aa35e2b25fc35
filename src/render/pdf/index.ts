export { type FontBytes, loadFonts } from './fonts.js';
export { type PdfOptions, type RenderedPdf, renderPdf } from './render-pdf.js';
export type { PageSize } from './style.js';
