import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { renderHtml } from '../../../src/render/html/render-html.js';
import { loadFonts, renderPdf } from '../../../src/render/pdf/index.js';
import { buildReport } from '../../../src/report/pages.js';
import { createDrawnAssessment } from '../../report/fixture.js';
import { readTemplates } from '../../report/templates.js';
import { variants } from '../../report/variants.js';
import { documentOf, paragraph } from '../documents.js';
import { elementsOf, type Opened, valuesOf } from './elements.js';
import { harmless, hostileDocument } from './hostile.js';

const written = async (report: Parameters<typeof renderHtml>[0]) =>
  new TextDecoder().decode(await renderHtml(report));
const report = buildReport(createDrawnAssessment(), readTemplates(), '2026-01-01');
let html: string;
let elements: Opened[];
beforeAll(async () => {
  html = await written(report);
  elements = elementsOf(html);
}, 60_000);

const named = (name: string) => elements.filter((element) => element.name === name);

describe('the page of a report', { timeout: 120_000 }, () => {
  it('has one heading above all others and leaves no level out', () => {
    const levels = elements.flatMap(({ name }) => (/^h[1-6]$/.test(name) ? [Number(name[1])] : []));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, index) => index > 0 && level > levels[index - 1]! + 1)).toEqual([]);
  });

  it('gives every id once, and every link of the contents leads to one', () => {
    const ids = valuesOf(elements, 'id');
    expect(new Set(ids).size).toBe(ids.length);
    const links = valuesOf(named('a'), 'href');
    expect(links).toHaveLength(report.sections.length + 1);
    expect(links.filter((link) => !ids.includes(link.replace(/^#/, '')))).toEqual([]);
  });

  it('names every table, tells what each heading heads, and lets the wide ones be reached', () => {
    expect(named('table').length).toBeGreaterThan(10);
    expect(named('caption')).toHaveLength(named('table').length);
    expect(named('th').filter(({ attributes }) => !attributes.scope)).toEqual([]);
    const regions = elements.filter(({ attributes }) => attributes.class === 'scroll');
    expect(regions.length).toBeGreaterThan(3);
    for (const { attributes } of regions) {
      expect(attributes).toMatchObject({ role: 'region', tabindex: '0' });
      expect(attributes['aria-label']).toMatch(/^Table: ./);
    }
  });

  it('says in words what each chart shows, and draws it for a wide and for a narrow place', () => {
    const images = elements.filter(({ attributes }) => attributes.role === 'img');
    expect(images.length).toBeGreaterThan(8);
    expect(images.filter(({ attributes }) => (attributes['aria-label'] ?? '').length < 20)).toEqual([]);
    expect(named('svg')).toHaveLength(2 * images.length);
    expect(named('figure')).toHaveLength(images.length);
  });

  it('has language, title and description, and the landmarks of a page', () => {
    expect(html.slice(0, 32)).toBe('<!doctype html>\n<html lang="en">');
    expect(html.includes('<title>Should the')).toBe(true);
    for (const name of ['header', 'nav', 'main', 'footer']) expect(named(name)).toHaveLength(1);
    expect(valuesOf(named('meta'), 'name')).toContain('description');
  });

  it('has no script, no style outside its sheet, and nothing to fetch', () => {
    expect(named('script')).toEqual([]);
    const allowed = /^on|^style$/;
    expect(
      elements.flatMap(({ attributes }) => Object.keys(attributes)).filter((key) => allowed.test(key)),
    ).toEqual([]);
    const addresses = [...valuesOf(elements, 'href'), ...valuesOf(elements, 'src')];
    expect(addresses.filter((address) => !/^(#|data:)/.test(address))).toEqual([]);
    expect(html.match(/url\((?!#|data:)[^)]*\)/g)).toBeNull();
  });

  it('allows by its policy exactly the style sheet that it has', () => {
    const [, style = ''] = /<style>([\s\S]*?)<\/style>/.exec(html) ?? [];
    const hash = createHash('sha256').update(style).digest('base64');
    const [policy = ''] = valuesOf(named('meta'), 'content').filter((content) =>
      content.includes('default-src'),
    );
    expect(policy.replaceAll('&#39;', "'")).toContain(`default-src 'none'; style-src 'sha256-${hash}';`);
    expect(policy).not.toContain('script-src');
  });

  it('is the same, byte for byte, whatever was drawn before', async () => {
    await renderPdf(documentOf(...report.sections.flatMap(({ blocks }) => blocks)), {
      fonts: await loadFonts(),
      pageSize: 'A4',
    });
    expect((await written(report)) === html).toBe(true);
  });

  it('carries the words and figures of the document', () => {
    const words = ['118 figures given', '✓ passes', '✗ fails: moving', 'kg·cm', '2 of 5 candidates'];
    expect(words.filter((word) => !html.includes(word))).toEqual([]);
  });

  for (const [name, create] of Object.entries(variants)) {
    it(`is made without complaint when: ${name}`, async () => {
      const odd = await written(buildReport(create(), readTemplates(), '2026-01-01'));
      expect(elementsOf(odd).filter((element) => element.name === 'h1')).toHaveLength(1);
    });
  }
});

describe('text that wants to be markup', () => {
  it('stays text in every kind of block and in the head of the page', async () => {
    const page = await written(hostileDocument());
    const found = elementsOf(page);
    expect(found.filter(({ name }) => name === 'script')).toEqual([]);
    const sources = found.filter(({ name }) => name === 'img').map(({ attributes }) => attributes.src);
    expect(sources.every((source) => source?.startsWith('data:image/png;base64,'))).toBe(true);
    expect(found.filter(({ attributes }) => 'onerror' in attributes)).toEqual([]);
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    expect(page).not.toMatch(/[\u202a-\u202e\u2066-\u2069]|javascript:|<!--/);
    expect(page).not.toContain('\u0007');
    expect(page.split(harmless).length).toBeGreaterThan(50);
  });

  it('gets an id that is one word', async () => {
    const page = elementsOf(await written(hostileDocument()));
    for (const id of valuesOf(page, 'id')) expect(id).toMatch(/^[a-z0-9_-]+$/);
  });
});

describe('a section that begins without a heading', () => {
  it('leaves the title to head the page', async () => {
    const page = await written(documentOf(paragraph('first')));
    expect(page).toContain('<h1>Title with &lt;signs&gt; &amp; &quot;more&quot;</h1>');
  });
});
