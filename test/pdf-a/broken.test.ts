import { beforeAll, describe, expect, it } from 'vitest';
import { loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import type { Block, ChartBlock } from '../../src/report/index.js';
import { documentOf, paragraph, tableOf } from '../render/documents.js';
import { breaks } from './breaks.js';
import { faultsOf, rules } from './rules.js';

const bars = {
  data: { values: [{ name: 'a', value: 1 }] },
  mark: { type: 'bar', opacity: 0.5 },
  encoding: { x: { field: 'value', type: 'quantitative' }, y: { field: 'name', type: 'nominal' } },
};
const chart: ChartBlock = {
  kind: 'chart',
  name: 'bars',
  specification: bars,
  narrow: bars,
  title: 'How long?',
  alternative: 'One bar: a reaches 1, and nothing else is shown.',
  caption: [{ text: 'Bars.' }],
  aspectRatio: 0.3,
};
const blocks: Block[] = [
  { kind: 'heading', level: 1, text: 'One', id: 'one' },
  { kind: 'heading', level: 2, text: 'Two', id: 'two' },
  paragraph('text'),
  { kind: 'list', ordered: true, items: [[{ text: 'item' }]] },
  { ...tableOf(3), title: 'Table' },
  chart,
];

let source: string;
beforeAll(async () => {
  const attachment = {
    ...{ name: 'a.csv', bytes: Buffer.from('a,b\n'), mimeType: 'text/csv', description: 'input' },
    relationship: 'Source' as const,
  };
  const fonts = await loadFonts();
  const options = { fonts, pageSize: 'A4' as const, compress: false, attachments: [attachment] };
  source = Buffer.from((await renderPdf(documentOf(...blocks), options)).bytes).toString('latin1');
}, 60_000);

const faults = (of: string) => faultsOf(Buffer.from(of, 'latin1'));

describe('the check of archival files', () => {
  it('finds nothing wrong with a small document that has everything', async () => {
    expect(await faults(source)).toEqual({});
  });

  it('has a broken file for every rule', () => {
    expect(Object.keys(breaks).sort()).toEqual(rules.map(({ id }) => id).sort());
  });

  it.each(Object.entries(breaks))('notices a file that breaks the rule: %s', async (rule, spoil) => {
    expect(Object.keys(await faults(spoil(source)))).toContain(rule);
  });
});
