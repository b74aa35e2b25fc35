import { beforeAll, describe, expect, it } from 'vitest';
import { type FontBytes, loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import type { ReportDocument } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { blocksOf } from '../report/document-text.js';
import { createAssessment, createDrawnAssessment } from '../report/fixture.js';
import { readTemplates } from '../report/templates.js';
import { variants } from '../report/variants.js';
import { documentOf, paragraph, tableOf } from './documents.js';
import { pdfPages } from './pdf-text.js';

let fonts: FontBytes;
/** The fixture's report, uncompressed. */
let bytes: Uint8Array;
const report = buildReport(createAssessment(), readTemplates(), '2026-01-01');
beforeAll(async () => {
  fonts = await loadFonts();
  bytes = (await plain(report)).bytes;
});

const plain = (document: ReportDocument) => renderPdf(document, { fonts, pageSize: 'A4', compress: false });
const squeezed = (text: string) => text.replace(/\s+/g, ' ');

describe('the PDF of a report', { timeout: 120_000 }, () => {
  it('carries every figure of the first page as text', () => {
    const [first] = pdfPages(bytes).map(squeezed);
    for (const figure of [
      '182',
      '661',
      '0.81',
      '4.12',
      '0.47',
      '0.64',
      '118 figures given',
      '10 min.',
      '120 min',
    ]) {
      expect(first).toContain(figure);
    }
    for (const line of ['✓ passes 5 limits', '✗ fails: moving', 'page 1 of', 'kg·cm'])
      expect(first).toContain(line);
  });

  it('is the same, byte for byte, from the same document, whatever the time zone', async () => {
    const zone = process.env.TZ;
    const drawn = buildReport(createDrawnAssessment(), readTemplates(), '2026-01-01');
    const one = await renderPdf(drawn, { fonts, pageSize: 'A4' });
    process.env.TZ = 'Asia/Kolkata';
    const other = await renderPdf(drawn, { fonts, pageSize: 'A4' });
    process.env.TZ = zone;
    expect(Buffer.compare(one.bytes, other.bytes)).toBe(0);
  });

  for (const [name, create] of Object.entries(variants)) {
    it(`is made without complaint when: ${name}`, async () => {
      const odd = buildReport(create(), readTemplates(), '2026-01-01');
      expect((await renderPdf(odd, { fonts, pageSize: 'Letter' })).pageCount).toBeGreaterThan(3);
    });
  }
});

describe('a table', () => {
  it('repeats its head on every page it runs over', async () => {
    const pages = pdfPages((await plain(documentOf(tableOf(150)))).bytes);
    expect(pages.length).toBeGreaterThan(2);
    for (const page of pages) expect(page).toContain('Name of row');
  });

  it('never cuts a row: all lines of a row are on one page', async () => {
    const long = (index: number) => `start${index} ${'middle '.repeat(60)}end${index}`;
    const pages = pdfPages((await plain(documentOf(tableOf(40, long)))).bytes);
    for (let index = 1; index <= 40; index++) {
      const page = pages.find((text) => text.includes(`start${index} `));
      expect(page).toContain(`end${index} `);
    }
  });

  it('goes on over pages where a single row is higher than a page, and loses no word', async () => {
    const words = Array.from({ length: 4000 }, (_, index) => `w${index}`);
    const pages = pdfPages((await plain(documentOf(tableOf(1, () => words.join(' '))))).bytes);
    const found = new Set(pages.join(' ').split(/\s+/));
    expect(words.filter((word) => !found.has(word))).toEqual([]);
  });
});

describe('a page', () => {
  it('carries its number, the foot line and the running head', async () => {
    const pages = pdfPages((await plain(documentOf(tableOf(100)))).bytes);
    pages.forEach((page, index) => {
      expect(page).toContain(`page ${index + 1} of ${pages.length}`);
      expect(page).toContain('foot');
      expect(page).toContain('Head A');
    });
  });

  it('takes columns that are higher than itself under each other', async () => {
    const columns = [1, 2].map((share) => ({
      share,
      blocks: [tableOf(80, (index) => `c${share}r${index}.`)],
    }));
    const text = pdfPages((await plain(documentOf({ kind: 'side-by-side', columns }))).bytes).join('');
    for (const part of ['c1r1.', 'c1r80.', 'c2r1.', 'c2r80.']) expect(text).toContain(part);
  });

  it('starts anew at a page break', async () => {
    const pages = pdfPages(
      (await plain(documentOf(paragraph('one'), { kind: 'page-break' }, paragraph('two')))).bytes,
    );
    expect(pages).toHaveLength(2);
  });

  it('shows a line of the working with its source', async () => {
    const line = {
      quantity: 'R',
      equation: 'R = V / I',
      numbers: '7.4 V / 5.8 A',
      result: '1.28 Ω',
      source: 'M5',
    };
    const [page] = pdfPages((await plain(documentOf({ kind: 'calculation', ...line }))).bytes);
    for (const part of ['R = V / I', '7.4 V / 5.8 A', '= 1.28 Ω', 'M5']) expect(page).toContain(part);
  });
});

describe('signs', () => {
  it('come from the second font where the first lacks them, and are copied as they are', async () => {
    const made = await plain(documentOf(paragraph('a ⌀ 20 mm pin, ⚠ hot')));
    expect(pdfPages(made.bytes)[0]).toContain('⌀');
    expect(made.missingCharacters).toEqual([]);
  });

  it('that no font has are shown as □ and reported with their text', async () => {
    const made = await plain(documentOf(paragraph('heron 🦢 here')));
    expect(squeezed(pdfPages(made.bytes)[0]!)).toContain('heron □ here');
    expect(made.missingCharacters).toEqual([{ character: '🦢', context: '🦢' }]);
  });
});

describe('the file', () => {
  it('is tagged: language, headings, table parts with scope, figures with their finding', () => {
    const source = Buffer.from(bytes).toString('latin1');
    const figures = report.sections.flatMap((section) => blocksOf(section.blocks, 'chart')).length;
    for (const part of [
      '/StructTreeRoot',
      '/Lang (en)',
      '/S /H1',
      '/S /H2',
      '/S /TH',
      '/Scope /Column',
      '/Scope /Row',
      '/S /Caption',
    ]) {
      expect(source).toContain(part);
    }
    expect(source.match(/\/S \/Figure/g)).toHaveLength(figures);
    expect(source.match(/\/Alt \(/g)).toHaveLength(figures);
  });

  it('has metadata that are XML whatever the title says, the date of the report, and no clock', async () => {
    const source = Buffer.from((await plain(documentOf(paragraph('x')))).bytes).toString('utf8');
    expect(source).toContain('Title with &lt;signs&gt; &amp; &quot;more&quot;</rdf:li>');
    expect(source).toContain('D:20260314000000Z');
    expect(source).not.toContain('ModDate');
  });

  it('opens its outline with the count of what shows', () => {
    const source = Buffer.from(bytes).toString('latin1');
    const root = /\/Outlines (\d+) 0 R/.exec(source)![1];
    const body = new RegExp(`\\n${root} 0 obj\\n([\\s\\S]*?)\\nendobj`).exec(source)![1]!;
    expect(Number(/\/Count (\d+)/.exec(body)![1])).toBe(report.sections.length + 1);
  });

  it('leads the bookmark of a section in the middle of a page to its heading', async () => {
    const above = Array.from({ length: 10 }, (_, index) => paragraph(`line ${index}`));
    const document = documentOf(...above);
    const [first] = document.sections;
    const blocks = [{ kind: 'heading' as const, level: 2 as const, text: 'Below', id: 'below' }];
    document.sections.push({ ...first!, title: 'B', startsPage: false, blocks });
    const source = Buffer.from((await plain(document)).bytes).toString('latin1');
    const tops = [...source.matchAll(/\/XYZ 0 ([\d.]+) 0/g)].map(([, top]) => Number(top));
    expect(tops).toHaveLength(2);
    expect(tops[0]! - tops[1]!).toBeGreaterThan(10 * 12);
    expect(pdfPages(Buffer.from(source, 'latin1'))).toHaveLength(1);
  });

  it('has an identifier that follows from all that it holds, not from title and date alone', async () => {
    const idOf = async (text: string) => {
      const source = Buffer.from((await plain(documentOf(paragraph(text)))).bytes).toString('latin1');
      return /\/ID \[<([0-9a-f]{32})> <\1>\]/.exec(source)![1];
    };
    const [one, other, again] = [await idOf('one'), await idOf('two'), await idOf('one')];
    expect([one === other, one === again]).toEqual([false, true]);
  });

  it('closes every marked stretch and every saved state on each page', () => {
    const source = Buffer.from(bytes).toString('latin1');
    const count = (pattern: RegExp) => source.match(pattern)?.length ?? 0;
    expect(count(/ (?:BDC|BMC)$/gm)).toBe(count(/^EMC$/gm));
    expect(count(/^q$/gm)).toBe(count(/^Q$/gm));
  });
});

describe('rows that go over to another page', { timeout: 120_000 }, () => {
  it('of a table are never one alone', async () => {
    const alone: number[] = [];
    let parted = 0;
    for (let rows = 30; rows <= 60; rows++) {
      const pages = pdfPages((await plain(documentOf(tableOf(rows)))).bytes);
      const [, second] = pages.map((text) => text.match(/row \d+/g)?.length ?? 0);
      if (second !== undefined) parted++;
      if (second === 1) alone.push(rows);
    }
    expect(parted).toBeGreaterThan(0);
    expect(alone).toEqual([]);
  });

  it('are all of a few facts, with their heading', async () => {
    const items = Array.from({ length: 12 }, (_, index) => ({ label: `fact ${index}`, value: 'x' }));
    for (let above = 36; above <= 60; above += 2) {
      const filler = Array.from({ length: above }, () => paragraph('above'));
      const heading = { kind: 'heading' as const, level: 3 as const, text: 'As listed', id: 'a' };
      const document = documentOf(...filler, heading, { kind: 'facts', columns: 3, items });
      const counts = pdfPages((await plain(document)).bytes).map((text) => [
        /As listed/.test(text),
        text.match(/fact \d+/g)?.length ?? 0,
      ]);
      expect(counts.filter(([, count]) => count !== 0)).toEqual([[true, 12]]);
    }
  });
});
