import { beforeAll, describe, expect, it } from 'vitest';
import { type FontBytes, loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import type { ChartBlock } from '../../src/report/index.js';
import { documentOf } from './documents.js';

let fonts: FontBytes;
beforeAll(async () => {
  fonts = await loadFonts();
});

const chartOf = (specification: Record<string, unknown>): ChartBlock => ({
  kind: 'chart',
  name: 'x',
  title: 'x?',
  alternative: 'x',
  caption: [],
  aspectRatio: 0.3,
  specification,
  narrow: specification,
});

const pdfOf = (specification: Record<string, unknown>) =>
  renderPdf(documentOf(chartOf(specification)), { fonts, pageSize: 'A4', compress: false });

describe('a chart that got past the check', () => {
  it('still reads no file', async () => {
    const file = new URL('../../package.json', import.meta.url).pathname;
    const specification = (data: object) => ({
      data,
      mark: 'text',
      encoding: { text: { field: 'name', type: 'nominal' } },
    });
    const given = await pdfOf(specification({ values: [{ name: 'holdwright' }] }));
    const fetched = await pdfOf(specification({ url: file, format: { type: 'json' } }));
    const empty = await pdfOf(specification({ values: [] }));
    expect(fetched.bytes.length).toBe(empty.bytes.length);
    expect(given.bytes.length).toBeGreaterThan(empty.bytes.length);
  });
});
