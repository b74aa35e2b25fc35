import type { ReportDocument, Section } from '../../report/document.js';
import { ArchivalDocument } from './archival-document.js';
import { type Attachment, attachFiles } from './attach.js';
import { layoutBlock } from './blocks/layout-block.js';
import type { Press } from './box.js';
import { prepareCharts } from './chart/prepare-chart.js';
import { chartSizes } from './chart-sizes.js';
import { Flow, type SectionStart } from './flow.js';
import type { FontBytes } from './fonts.js';
import { drawFurniture } from './furniture.js';
import { Outline } from './outline.js';
import { type Geometry, geometryOf, type PageSize } from './style.js';
import { Tags } from './tags.js';
import { Typesetter } from './typesetter.js';

/** What a PDF needs beside the report itself. */
export interface PdfOptions {
  fonts: FontBytes;
  pageSize: PageSize;
  /** Files that travel inside. */
  attachments?: readonly Attachment[];
  /** Uncompressed files can be read as text; for tests. */
  compress?: boolean;
}

/** The finished file, and what its fonts could not show. */
export interface RenderedPdf {
  bytes: Uint8Array;
  pageCount: number;
  /** Signs that no font has, each with a text it stood in; they are shown as □. */
  missingCharacters: { character: string; context: string }[];
}

/**
 * Sets a report as a tagged PDF for archives (PDF/A-3a): real text, vector charts, embedded fonts, and the files that
 * were given along. The same document, fonts, files and page size give the same bytes.
 */
export async function renderPdf(report: ReportDocument, options: PdfOptions): Promise<RenderedPdf> {
  const geometry = geometryOf(options.pageSize);
  const document = openDocument(report, geometry, options);
  const bytes = collect(document);
  const typesetter = new Typesetter(document, options.fonts);
  const charts = await prepareCharts(typesetter, chartSizes(report, geometry));
  const press: Press = { document, typesetter, tags: new Tags(document), geometry, charts };
  const flow = new Flow(press);
  const outline = new Outline(press, report.appendixTitle);
  report.sections.forEach((section, index) => {
    placeSection(press, flow, outline, section, startOf(section, report.sections[index - 1]));
  });
  drawFurniture(press, report, flow.runningHeads);
  attachFiles(document, options.attachments ?? [], dateOf(report.date));
  const pageCount = document.bufferedPageRange().count;
  document.end();
  return { bytes: await bytes, pageCount, missingCharacters: typesetter.missingCharacters() };
}

/** Who leafs through the first pages finds each question at the head of one; the appendix saves paper. */
function startOf(section: Section, before: Section | undefined): SectionStart {
  if (!section.startsPage) return 'beneath';
  return section.part === 'appendix' && before?.part === 'appendix' ? 'own-page-or-tail' : 'own-page';
}

function placeSection(
  press: Press,
  flow: Flow,
  outline: Outline,
  section: Section,
  start: SectionStart,
): void {
  flow.startSection(section.runningHead, start, (top) => outline.addSection(section, top));
  const parent = press.tags.open(null, 'Sect', { title: section.title });
  const headingLevel = { current: section.startsPage ? 0 : 1 };
  const { textWidth: width } = press.geometry;
  let pending: ReturnType<typeof layoutBlock> = [];
  for (const block of section.blocks) {
    if (block.kind === 'page-break') {
      flow.place(pending);
      flow.breakPage();
      pending = [];
    } else pending.push(...layoutBlock(press, block, { width, parent, headingLevel }));
  }
  flow.place(pending);
}

function openDocument(report: ReportDocument, geometry: Geometry, options: PdfOptions): ArchivalDocument {
  return new ArchivalDocument({
    size: [geometry.width, geometry.height],
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    compress: options.compress ?? true,
    pdfVersion: '1.7',
    subset: 'PDF/A-3a',
    tagged: true,
    lang: report.language,
    displayTitle: true,
    font: '',
    info: {
      ...written({
        Title: report.title,
        Author: report.author,
        Subject: report.subject,
        Keywords: report.keywords.join(', '),
        Creator: 'holdwright',
        Producer: 'holdwright (pdfkit)',
      }),
      CreationDate: dateOf(report.date),
    },
  } as PDFKit.PDFDocumentOptions);
}

/** What is empty is left out: the XML metadata leave it out too, and the two must say the same. */
function written(texts: Record<string, string>): Record<string, string> {
  return Object.fromEntries(Object.entries(texts).filter(([, text]) => text !== ''));
}

/** The report's own date, so that no clock gets into the file. */
function dateOf(date: string): Date {
  const parsed = new Date(/^\d{4}-\d{2}-\d{2}$/.test(date) ? `${date}T00:00:00Z` : date);
  return Number.isNaN(parsed.getTime()) ? new Date(0) : parsed;
}

function collect(document: ArchivalDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const parts: Uint8Array[] = [];
    document.on('data', (part: Uint8Array) => parts.push(part));
    document.on('end', () => resolve(Buffer.concat(parts)));
    document.on('error', reject);
  });
}
