import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkText } from '../../src/app/check-text.js';
import { measureText } from '../../src/app/measure-text.js';
import { assessStudy } from '../../src/app/study.js';
import type { Assessment } from '../../src/assess/assessment.js';
import type { InputFile } from '../../src/input/files.js';
import { type FormatName, formats, type Renderable } from '../../src/render/index.js';
import { summarise, toResults } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { request } from '../app/demo.js';
import { pdfPages } from '../render/pdf-text.js';
import { readTemplates } from '../report/templates.js';
import { poisoned, wholeDemo } from './poisoned.js';
import { hostileTexts, mark, steering } from './texts.js';

const templates = readTemplates();
const settings = { pageSize: 'A4' as const, width: 80, colour: false };
const date = '2026-03-14';

function assessmentOf(files: InputFile[]): Assessment {
  const result = assessStudy({ ...request(files), templates });
  const errors = result.issues.filter(({ severity }) => severity === 'error');
  expect(errors).toEqual([]);
  if (!result.ok) throw new Error('the study does not read');
  return result.value;
}

const renderable = (assessment: Assessment): Renderable => ({
  document: buildReport(assessment, templates, date),
  summary: () => summarise(assessment, templates, date),
  results: toResults(assessment),
});

const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true }).decode(bytes);

/** A format's bytes; of the PDF uncompressed, so that its text can be read back. */
async function bytesOf(name: FormatName, report: Renderable): Promise<Uint8Array> {
  if (name !== 'pdf') return (await formats[name].render(report, settings)).bytes;
  const { loadFonts, renderPdf } = await import('../../src/render/pdf/index.js');
  const options = { fonts: await loadFonts(), pageSize: settings.pageSize, compress: false };
  return (await renderPdf(report.document, options)).bytes;
}

/** What holds of a format whatever stands in the cells; a format without a line here must be plain, tame text. */
const demands: Partial<
  Record<string, (bytes: Uint8Array, assessment: Assessment, plainPages: number) => void>
> = {
  pdf(bytes, _, plainPages) {
    const pages = pdfPages(bytes);
    const text = pages.join('\n');
    expect(text).toContain(mark);
    expect(text).not.toMatch(steering);
    expect(text).not.toContain('�');
    expect(pages.length).toBeLessThanOrEqual(plainPages * 1.6);
    expect(wordsOffThePage(bytes)).toEqual([]);
  },
  json(bytes, assessment) {
    const text = textOf(bytes);
    expect(text).not.toMatch(steering);
    expect(JSON.parse(text).study.about.project).toBe(assessment.study.about.project);
  },
  csv(bytes, assessment) {
    const text = textOf(bytes);
    expect(text).not.toMatch(steering);
    expect(text).not.toMatch(/(^|[,;\t\r\n"]) *[=+@]/m);
    expect(text.split('\r\n')).toHaveLength(assessment.candidates.length + 2);
  },
  html(bytes) {
    const text = textOf(bytes);
    expect(text).toContain(mark);
    expect(text).not.toMatch(steering);
    for (const raw of ['<script>alert', '<img src=x', `<!-- ${mark}`, '<style>]]']) {
      expect(text).not.toContain(raw);
    }
    // Between tags a quotation mark is a letter like any other; inside one it must not end the attribute it stands in.
    const tags = text.match(/<[a-z][^>]*>/gi)!.map((tag) => tag.replace(/"[^"]*"/g, ''));
    expect(tags.filter((tag) => /onmouseover|onerror/.test(tag))).toEqual([]);
  },
};

const tameText = (bytes: Uint8Array) => {
  expect(textOf(bytes)).toContain(mark);
  expect(textOf(bytes)).not.toMatch(steering);
};

/** Words that stand beyond the edge of a page; none where the tool that looks is not there. */
function wordsOffThePage(bytes: Uint8Array): string[] {
  const path = join(mkdtempSync(join(tmpdir(), 'holdwright-')), 'report.pdf');
  writeFileSync(path, bytes);
  const { stdout, error } = spawnSync('pdftotext', ['-bbox', path, '-'], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) return [];
  return stdout.split('\n').filter((line) => {
    const found = /<word xMin="([-\d.]+)" yMin="[-\d.]+" xMax="([-\d.]+)"/.exec(line);
    return found !== null && (Number(found[1]) < 0 || Number(found[2]) > 596);
  });
}

describe('a hostile text in every cell that takes text', { timeout: 120_000 }, () => {
  let plainPages = 0;
  beforeAll(async () => {
    plainPages = pdfPages(await bytesOf('pdf', renderable(assessmentOf(wholeDemo())))).length;
  }, 120_000);

  it.each(Object.entries(hostileTexts))('%s is shown as text and does nothing', async (_, text) => {
    const assessment = assessmentOf(poisoned(text));
    const report = renderable(assessment);
    for (const name of Object.keys(formats) as FormatName[]) {
      const bytes = await bytesOf(name, report);
      (demands[name] ?? tameText)(bytes, assessment, plainPages);
    }
    for (const said of [checkText(assessment, 80), measureText(assessment, 80)]) {
      expect(said).not.toMatch(steering);
    }
  });
});
