import type { ReportDocument, ReportSummary, Results, Weighing } from '../report/index.js';
import type { DecimalMark } from './csv/render-csv.js';
import type { Attachment } from './pdf/attach.js';
import type { PageSize } from './pdf/style.js';

/** What the formats are made from: the report, its summary, and the bare results. */
export interface Renderable {
  document: ReportDocument;
  /** Put together when a format asks for it. */
  summary(): ReportSummary;
  results: Results;
  /** What a reader of the page may set otherwise; left out for a page that only shows. */
  weighing?: Weighing;
  /** Files that the PDF carries. */
  attachments?: readonly Attachment[];
}

/** How a report is set. */
export interface RenderSettings {
  pageSize: PageSize;
  /** Columns of the terminal. */
  width: number;
  colour: boolean;
  /** Path of the written report, for the terminal. */
  written?: string;
  /** Decimal mark of CSV; a point when left out. */
  decimal?: DecimalMark;
}

/** What a format makes. */
export interface Rendered {
  bytes: Uint8Array;
  /** Signs that no font has, each with a text it stood in. */
  missingCharacters: { character: string; context: string }[];
}

/** A format: the file it fills, and how. */
export interface Format {
  /** Name of the file; null for what goes to a stream. */
  fileName: string | null;
  render(report: Renderable, settings: RenderSettings): Promise<Rendered>;
}

/** The formats there are. */
export type FormatName = 'pdf' | 'html' | 'json' | 'csv' | 'terminal';

/** Every format the report comes in. A new one is one folder and one line here; each loads what it needs when asked. */
export const formats: Record<FormatName, Format> = {
  pdf: {
    fileName: 'report.pdf',
    render: async ({ document, attachments = [] }, { pageSize }) => {
      const { loadFonts, renderPdf } = await import('./pdf/index.js');
      return renderPdf(document, { fonts: await loadFonts(), pageSize, attachments });
    },
  },
  html: {
    fileName: 'report.html',
    render: async ({ document, weighing }) => {
      const { renderHtml } = await import('./html/render-html.js');
      return { bytes: await renderHtml(document, weighing), missingCharacters: [] };
    },
  },
  json: {
    fileName: 'results.json',
    render: async ({ results }) => {
      const { renderJson } = await import('./json/render-json.js');
      return asBytes(renderJson(results));
    },
  },
  csv: {
    fileName: 'ranking.csv',
    render: async ({ results }, { decimal }) => {
      const { exportTable } = await import('../report/pages.js');
      const { renderCsv } = await import('./csv/render-csv.js');
      return asBytes(renderCsv(exportTable(results), decimal));
    },
  },
  terminal: {
    fileName: null,
    render: async ({ summary }, settings) => {
      const { renderTerminal } = await import('./terminal/render-terminal.js');
      return asBytes(renderTerminal(summary(), settings));
    },
  },
};

function asBytes(text: string): Rendered {
  return { bytes: new TextEncoder().encode(text), missingCharacters: [] };
}
