import type { Block, ReportDocument, TableBlock } from '../../src/report/index.js';

/** A document of one section around some blocks. */
export function documentOf(...blocks: Block[]): ReportDocument {
  return {
    title: 'Title with <signs> & "more"',
    subtitle: 'Subtitle',
    author: 'author',
    subject: 'subject',
    keywords: ['one'],
    language: 'en',
    date: '2026-03-14',
    footer: 'foot',
    pageNumber: 'page # of ##',
    appendixTitle: 'Appendix',
    sections: [{ name: 'a', title: 'A', runningHead: 'Head A', part: 'answer', startsPage: true, blocks }],
  };
}

export function paragraph(text: string): Block {
  return { kind: 'paragraph', style: 'body', text: [{ text }] };
}

/** A table of so many rows: `row 1 | 1.00`. */
export function tableOf(rows: number, text = (index: number) => `row ${index}`): TableBlock {
  return {
    kind: 'table',
    title: '',
    columns: [
      { heading: 'Name of row', unit: '', align: 'left', share: 2 },
      { heading: 'Value', unit: 'W', align: 'right', share: 1 },
    ],
    rows: Array.from({ length: rows }, (_, index) => ({
      cells: [{ text: [{ text: text(index + 1) }] }, { text: [{ text: `${index + 1}.00` }] }],
    })),
    note: [],
    rowHeads: true,
  };
}
