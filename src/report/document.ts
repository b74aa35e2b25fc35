/** A run of text with emphasis; renderers decide what emphasis looks like. */
export interface Span {
  text: string;
  strong?: boolean;
  emphasis?: boolean;
  code?: boolean;
}

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

export interface TableCell {
  text: Inline;
  /** `good` and `bad` are always accompanied by words or a mark in the text; never by colour alone. */
  tone?: 'good' | 'bad' | 'muted';
}

export interface TableRow {
  cells: TableCell[];
  /** The row the reader should see first. */
  highlighted?: boolean;
}

/** A chart: a Vega-Lite specification with its data, and the finding it shows in words. */
export interface ChartBlock {
  kind: 'chart';
  /** Template it was made from: `runtime-against-target`. */
  name: string;
  specification: Record<string, unknown>;
  /** The reader's question. */
  title: string;
  /** States the finding with its numbers; used as alternative text. */
  alternative: string;
  caption: Inline;
  /** Wanted height as a share of the page width. */
  aspectRatio: number;
}

export type Block =
  | { kind: 'heading'; level: 1 | 2 | 3; text: string; id: string }
  | { kind: 'paragraph'; text: Inline; style: 'body' | 'lead' | 'small' }
  | { kind: 'list'; ordered: boolean; items: Inline[] }
  | {
      kind: 'table';
      title: string;
      columns: TableColumn[];
      rows: TableRow[];
      note: Inline;
      rowHeads: boolean;
    }
  | ChartBlock
  | { kind: 'caution'; severity: 'severe' | 'caution' | 'note'; figure: string; text: Inline; action: Inline }
  | {
      kind: 'calculation';
      quantity: string;
      equation: string;
      numbers: string;
      result: string;
      source: string;
    }
  | { kind: 'facts'; items: { label: string; value: string }[] }
  | { kind: 'side-by-side'; left: Block[]; right: Block[] }
  | { kind: 'page-break' };

/** A section is a page or a run of pages with a name in the outline. */
export interface Section {
  name: string;
  title: string;
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
  sections: Section[];
}
