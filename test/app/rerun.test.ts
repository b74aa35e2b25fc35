import { beforeAll, describe, expect, it } from 'vitest';
import { studyFromReport } from '../../src/app/rerun.js';
import { agreementOf } from '../../src/app/rerun-agreement.js';
import { settingsText } from '../../src/app/rerun-settings.js';
import { rerunText } from '../../src/app/rerun-text.js';
import { reportFiles, resultsText, type StudyRequest } from '../../src/app/study.js';
import { bytesOf, sha256Of } from '../../src/archive/digest.js';
import { assumptionsFile } from '../../src/input/files.js';
import type { Attachment } from '../../src/render/pdf/attach.js';
import { loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import { assumptionsTable, quickAssess, smallStudy } from '../archive/small-study.js';
import { documentOf, paragraph } from '../render/documents.js';
import { readTemplates } from '../report/templates.js';
import { request } from './demo.js';

const templates = { ...readTemplates(), [assumptionsFile]: assumptionsTable() };

/** A small study with files whose names not every disk takes, or that a table beside the templates has too. */
function asked(): StudyRequest {
  const odd = ['Füße & "more".csv', 'assumptions.csv', 'aux.csv'];
  const more = odd.map((name) => ({ name, bytes: bytesOf(`note\n${name}\n`) }));
  return { ...request([...smallStudy(), ...more], ['feature.mass=500 g']), templates };
}

describe('a study out of a report', { timeout: 120_000 }, () => {
  const study = asked();
  let text: string;
  let opened: Awaited<ReturnType<typeof studyFromReport>>;
  beforeAll(async () => {
    const assessed = quickAssess(study);
    if (!assessed.ok) throw new Error(assessed.issues.map(({ message }) => message).join());
    text = resultsText(assessed.value);
    const { files } = await reportFiles(assessed.value, study, {
      page: 'Letter',
      date: '2026-03-14T00:00:00Z',
    });
    opened = await studyFromReport('report.pdf', files[0]!.bytes, {
      ...templates,
      [assumptionsFile]: 'others',
    });
  }, 60_000);

  it('has its files under their own names, its settings, its table of assumptions and its results', () => {
    if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join());
    const { files, settings, results, templates: used } = opened.value;
    const byName = (of: StudyRequest['files']) => [...of].sort((a, b) => (a.name < b.name ? -1 : 1));
    expect(files.map(({ name, bytes }) => [name, sha256Of(bytes)])).toEqual(
      byName(study.files).map(({ name, bytes }) => [name, sha256Of(bytes)]),
    );
    expect(settings).toMatchObject({ page: 'Letter', date: '2026-03-14T00:00:00Z', changes: study.changes });
    expect(used[assumptionsFile]).toBe(assumptionsTable());
    expect(results).toBe(text);
  });

  it('agrees with itself, whatever the version of the program', () => {
    const other = text.replace('"version": "0.0.0"', '"version": "9.0.0"');
    expect(agreementOf(other, text)).toMatchObject({ different: [], version: { earlier: '9.0.0' } });
  });

  it('tells the last digits of a computer from a figure that moved, and names that one', () => {
    if (!opened.ok) throw new Error('not opened');
    const runtime = (factor: number) =>
      text.replace(/("runtimeS": )([\d.]+)/, (_, key, value) => `${key}${Number(value) * factor}`);
    const close = agreementOf(runtime(1 + 1e-13), text);
    expect([close.different.length, close.moved]).toEqual([1, []]);
    expect(rerunText('r.pdf', opened.value, close, 80)).toContain(
      'Results agree: 1 figure differs in the last',
    );
    const far = agreementOf(runtime(2), text);
    expect(far.moved).toHaveLength(1);
    const told = rerunText('r.pdf', opened.value, far, 200);
    expect(told).toMatch(/Results do not agree: 1 entry of results\.json differs; figures moved/);
    expect(told).toMatch(/runtime \d+ min → \d+ min/);
  });

  it('names the place of what moved where no key figure did', () => {
    if (!opened.ok) throw new Error('not opened');
    const moved = agreementOf(text.replace(/"seed": \d+/, '"seed": 77'), text);
    expect(rerunText('r.pdf', opened.value, moved, 200)).toContain('differs: seed');
  });
});

describe('a PDF that cannot be computed from', { timeout: 120_000 }, () => {
  const file = (name: string, text: string): Attachment => ({
    ...{ name, bytes: bytesOf(text), mimeType: 'text/csv', description: 'x' },
    relationship: 'Source',
  });
  const carried = { role: 'input' as const, name: 'study.csv', attachment: 'study.csv' };
  const settings = settingsText({
    ...{ version: '1', page: 'A4', date: '2026-03-14', changes: [] },
    files: [{ ...carried, sha256: sha256Of(bytesOf('as it was')) }],
  });

  async function codesOf(...attachments: Attachment[]): Promise<string[]> {
    const options = { fonts: await loadFonts(), pageSize: 'A4' as const, attachments };
    const { bytes } = await renderPdf(documentOf(paragraph('x')), options);
    return (await studyFromReport('x.pdf', bytes, {})).issues.map(({ code }) => code);
  }

  it('is told apart: no study, a form of another age, a file that is missing or is not what it was', async () => {
    expect(await codesOf(file('study.csv', 'as it was'))).toEqual(['carries-no-study']);
    expect(await codesOf(file('rerun.json', '{"format": "holdwright-rerun/2"}'))).toEqual([
      'unknown-settings',
    ]);
    expect(await codesOf(file('rerun.json', settings.replace('"A4"', '7')))).toEqual(['unknown-settings']);
    expect(await codesOf(file('rerun.json', settings), file('results.json', '{}'))).toEqual([
      'missing-attachment',
    ]);
    const other = [file('study.csv', 'as it is'), file('results.json', '{}')];
    expect(await codesOf(file('rerun.json', settings), ...other)).toEqual(['changed-attachment']);
  });
});
