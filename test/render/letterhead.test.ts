import { beforeAll, describe, expect, it } from 'vitest';
import { readPicture } from '../../src/app/templates/read-picture.js';
import { type FontBytes, loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import type { ReportImage } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { createAssessment } from '../report/fixture.js';
import { readTemplates } from '../report/templates.js';
import { pdfPages } from './pdf-text.js';
import { png } from './pictures.js';

let fonts: FontBytes;
beforeAll(async () => {
  fonts = await loadFonts();
});

const letterhead = `::: columns 3:1
::: small
**Lantern works**\\
12 Reed Lane
:::
---
![Lantern works, a heron](logo.png)
:::
`;

async function pdfWith(contents: string, images: Record<string, ReportImage> = {}) {
  const templates = {
    ...readTemplates(),
    'report/contents.md': contents,
    'report/letterhead.md': letterhead,
  };
  const logo = { 'logo.png': readPicture(png()) as ReportImage };
  const report = buildReport(createAssessment(), templates, '', { images: { ...logo, ...images } });
  const { bytes } = await renderPdf(report, { fonts, pageSize: 'A4', compress: false });
  return { bytes, text: Buffer.from(bytes).toString('latin1'), sections: report.sections };
}

/** Titles of bookmarks in the order in which they are written. */
const outlineOf = (text: string) =>
  [...text.matchAll(/\/Title \(([^)]*)\)/g)].map(([, title]) => title!.replace(/\0|þÿ/g, ''));

describe('a letterhead of the user', { timeout: 120_000 }, () => {
  it('stands on the first page, lines broken as written, whatever comes first', async () => {
    for (const contents of ['- answer\n- why\n', '- heat\n- cautions\n', '- inputs\n']) {
      const { bytes } = await pdfWith(contents);
      const [first, second] = pdfPages(bytes);
      expect(first).toMatch(/Lantern works\s+12 Reed Lane/);
      expect(second ?? '').not.toContain('Reed Lane');
    }
  });

  it('has its logo as a figure with words, alpha and all, the same in the same bytes', async () => {
    const { text, bytes } = await pdfWith('- cautions\n');
    expect(text).toMatch(/\/S \/Figure/);
    expect(text).toContain('Lantern works, a heron');
    expect(text).toMatch(/\/SMask \d+ 0 R/);
    expect(text).not.toMatch(/\/Interpolate true|DeviceCMYK/);
    expect(Buffer.compare(bytes, (await pdfWith('- cautions\n')).bytes)).toBe(0);
  });

  it('needs a picture that is there, and words for it', () => {
    const build = (source: string) => {
      const templates = { ...readTemplates(), 'report/letterhead.md': source };
      const images = { 'logo.png': readPicture(png()) as ReportImage };
      return () => buildReport(createAssessment(), templates, '', { images });
    };
    expect(build('![Us](lgoo.png)')).toThrow('line 1: there is no picture lgoo.png');
    expect(build('![Us](../../etc/passwd)')).toThrow('there is no picture ../../etc/passwd');
    expect(build('\n![](logo.png)')).toThrow('line 2: the picture needs words');
  });
});

describe('the order of sections', { timeout: 120_000 }, () => {
  it.each([
    [
      '- answer\n- why\n- cautions\n- heat\n- inputs\n',
      ['answer', 'answer', 'answer', 'appendix', 'appendix'],
    ],
    ['- heat\n- answer\n- inputs\n', ['answer', 'answer', 'appendix']],
    ['- cautions\n- mass-fit-money\n- why\n- inputs\n', ['answer', 'answer', 'answer', 'appendix']],
    ['- heat\n- inputs\n', ['answer', 'answer']],
    ['- provenance\n', ['answer']],
    ['- answer\n', ['answer']],
  ])(
    'sets %j with the appendix behind what stands alone, and bookmarks in page order',
    async (contents, parts) => {
      const { sections, text } = await pdfWith(contents);
      expect(sections.map(({ part }) => part)).toEqual(parts);
      const outline = outlineOf(text);
      expect(outline.filter((title) => title !== 'Appendix')).toEqual(sections.map(({ title }) => title));
      expect(outline.includes('Appendix')).toBe(parts.includes('appendix'));
      expect(
        sections.every(({ part, runningHead }) => (part === 'appendix') === /^Appendix/.test(runningHead)),
      ).toBe(true);
    },
  );
});
