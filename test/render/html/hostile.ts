import type { Block, ReportDocument } from '../../../src/report/index.js';
import { documentOf } from '../documents.js';

/** Text that wants to be markup, ends every element it could stand in, and turns the direction of reading. */
export const hostile = `"'><img src=x onerror=alert(1)></script></style><!-- \u202egnp\u2066\u0007]]> &amp;`;

/** The same as a reader sees it, in HTML. */
export const harmless =
  '&quot;&#39;&gt;&lt;img src=x onerror=alert(1)&gt;&lt;/script&gt;&lt;/style&gt;&lt;!-- gnp]]&gt; &amp;amp;';

const text = [{ text: hostile, strong: true, emphasis: true, code: true }];

const hostileChart = {
  description: hostile,
  data: { values: [{ x: 1, name: hostile, link: 'javascript:alert(1)' }] },
  mark: 'bar',
  encoding: {
    x: { field: 'x', type: 'quantitative', title: hostile },
    y: { field: 'name', type: 'nominal' },
    href: { field: 'link' },
  },
};

/** One block of every kind with the text wherever there is any; the compiler names a kind that is missing. */
const blocks: Record<Exclude<Block['kind'], 'side-by-side'>, Block> = {
  heading: { kind: 'heading', level: 1, text: hostile, id: hostile },
  paragraph: { kind: 'paragraph', style: 'answer', text },
  list: { kind: 'list', ordered: true, items: [text] },
  table: {
    kind: 'table',
    title: hostile,
    columns: ['a', 'b', 'c', 'd'].map(() => ({ heading: hostile, unit: hostile, align: 'left', share: 1 })),
    rows: [{ cells: [{ text }], group: true }, { cells: [{ text }, { text, span: 3 }] }],
    note: text,
    rowHeads: true,
  },
  chart: {
    kind: 'chart',
    name: 'hostile',
    title: hostile,
    alternative: hostile,
    caption: text,
    aspectRatio: 0.3,
    specification: hostileChart,
    narrow: hostileChart,
  },
  caution: {
    kind: 'caution',
    severity: 'severe',
    label: hostile,
    about: hostile,
    figure: hostile,
    text,
    action: text,
  },
  calculation: {
    kind: 'calculation',
    quantity: hostile,
    equation: hostile,
    numbers: hostile,
    result: hostile,
    source: hostile,
  },
  facts: { kind: 'facts', items: [{ label: hostile, value: hostile, note: hostile }], columns: 2 },
  image: {
    kind: 'image',
    format: 'png',
    bytes: new TextEncoder().encode(hostile),
    widthPixels: 1,
    heightPixels: 1,
    alternative: hostile,
  },
  'page-break': { kind: 'page-break' },
};

/** A report in which nothing is harmless. */
export function hostileDocument(): ReportDocument {
  const all = Object.values(blocks);
  const report = documentOf(...all, { kind: 'side-by-side', columns: [{ share: 2.5, blocks: all }] });
  return {
    ...report,
    ...{ title: hostile, subtitle: hostile, author: hostile, subject: hostile, keywords: [hostile] },
    ...{ footer: hostile, appendixTitle: hostile },
    sections: report.sections.map((section) => ({ ...section, title: hostile, part: 'appendix' })),
  };
}
