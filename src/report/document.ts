/** A run of text with emphasis; renderers decide what emphasis looks like. A line feed in it begins a new line. */
export interface Span {
  text: string;
  strong?: boolean;
  emphasis?: boolean;
  code?: boolean;
}

/** A run of text, span after span. */
export type Inline = Span[];

/** How a table column is set. */
export interface TableColumn {
  heading: string;
  /** Unit shown under or after the heading; empty for none. */
  unit: string;
  align: 'left' | 'right' | 'centre';
  /** Relative width, 1 = ordinary. */
  share: number;
}

/** One cell: what it says, and how it is set. */
export interface TableCell {
  text: Inline;
  /** `good` and `bad` are always accompanied by words or a mark in the text; never by colour alone. */
  tone?: 'good' | 'bad' | 'muted';
  /** Columns it spans; 1 when not said. */
  span?: number;
}

/** One row of cells. */
export interface TableRow {
  cells: TableCell[];
  /** The row the reader should see first. */
  highlighted?: boolean;
  /** A heading inside the table: its only cell spans all columns. */
  group?: boolean;
}

/** A table with its title and notes. */
export interface TableBlock {
  kind: 'table';
  /** Shown above the table and used by assistive software; empty for none. */
  title: string;
  columns: TableColumn[];
  rows: TableRow[];
  /** Small print under the table; empty for none. */
  note: Inline;
  /** The first cell of a row names the row. */
  rowHeads: boolean;
  /** Set tighter, for long lists of figures. */
  compact?: boolean;
}

/** A chart: a Vega-Lite specification with its data, and the finding it shows in words. */
export interface ChartBlock {
  kind: 'chart';
  /** Template it was made from: `runtime-against-target`. */
  name: string;
  specification: Record<string, unknown>;
  /** The same for a place as narrow as a telephone; it has the height that its rows need. */
  narrow: Record<string, unknown>;
  /** The reader's question. */
  title: string;
  /** States the finding with its numbers; used as alternative text. */
  alternative: string;
  caption: Inline;
  /** Wanted height as a share of the page's text width, whatever the width of the column it stands in. */
  aspectRatio: number;
}

/** One figure of a facts grid. */
export interface Fact {
  label: string;
  value: string;
  /** Said in a lower voice after the value: what it was read as, where it comes from. */
  note?: string;
}

/** A grid of figures with their names. */
export interface FactsBlock {
  kind: 'facts';
  items: Fact[];
  columns: number;
  /** `headline`: large figures that are seen first; `blank`: lines to fill in by hand, the values being empty. */
  style?: 'plain' | 'headline' | 'blank';
}

/** Something to know before the feature moves near people, with what to do. */
export interface CautionBlock {
  kind: 'caution';
  severity: 'severe' | 'caution' | 'note';
  /** The severity in a word. */
  label: string;
  /** Candidate it concerns; empty for the whole feature. */
  about: string;
  /** The figure that raised it, with its unit; empty for none. */
  figure: string;
  text: Inline;
  action: Inline;
}

/** A picture from a file beside the wording, such as the logo of a letterhead. */
export interface ImageBlock extends ReportImage {
  kind: 'image';
  /** Said instead of the picture by who cannot see it; never empty. */
  alternative: string;
}

/** A picture as its file holds it: 8 bits per channel, grey or RGB, alpha only in a PNG. */
export interface ReportImage {
  format: 'png' | 'jpeg';
  bytes: Uint8Array;
  widthPixels: number;
  heightPixels: number;
}

/** Blocks below one another, beside another such column. */
export interface Column {
  /** Relative width. */
  share: number;
  blocks: Block[];
}

/** Whatever a section is made of. */
export type Block =
  | { kind: 'heading'; level: 1 | 2 | 3; text: string; id: string }
  | { kind: 'paragraph'; text: Inline; style: 'body' | 'lead' | 'small' | 'answer' }
  | { kind: 'list'; ordered: boolean; items: Inline[]; style?: 'body' | 'small' }
  | TableBlock
  | ChartBlock
  | CautionBlock
  | ImageBlock
  | {
      kind: 'calculation';
      quantity: string;
      equation: string;
      numbers: string;
      result: string;
      source: string;
    }
  | FactsBlock
  | { kind: 'side-by-side'; columns: Column[] }
  | { kind: 'page-break' };

/** A section is a page or a run of pages with a name in the outline. */
export interface Section {
  name: string;
  title: string;
  /** Stands at the head of its pages. */
  runningHead: string;
  /** Part of the pages that stand alone, or of the appendix. */
  part: 'answer' | 'appendix';
  startsPage: boolean;
  blocks: Block[];
}

/** The report before it has fonts or points. */
export interface ReportDocument {
  title: string;
  subtitle: string;
  author: string;
  subject: string;
  keywords: string[];
  language: string;
  /** ISO date or date-time printed and stored in the file. */
  date: string;
  /** Short text for every page's foot. */
  footer: string;
  /** How a page is numbered, with `#` for the page and `##` for the last: `page # of ##`. */
  pageNumber: string;
  /** Name of the appendix in the outline. */
  appendixTitle: string;
  sections: Section[];
}
