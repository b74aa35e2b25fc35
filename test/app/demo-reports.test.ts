import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assessStudy, type ReportSetting, reportFiles, resultsText } from '../../src/app/study.js';
import { attachedFiles } from '../../src/archive/attached.js';
import type { Results } from '../../src/report/index.js';
import { openPdf } from '../pdf-a/open-pdf.js';
import { faultsOf } from '../pdf-a/rules.js';
import { readTemplates } from '../report/templates.js';
import { demoFiles, request } from './demo.js';
import { lookUpPageOne } from './page-one.js';

const besides = ['assumptions.csv', 'points-of-view.csv', 'results.schema.json'];
const templates = {
  ...readTemplates(),
  ...Object.fromEntries(
    besides.map((name) => [name, readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8')]),
  ),
};

describe.each(['lantern-parade', 'stage-prop'])('the report of %s', { timeout: 120_000 }, (name) => {
  const asked = { ...request(demoFiles(name)), templates };
  const assessed = assessStudy(asked);
  if (!assessed.ok) throw new Error('the demo has errors');
  const made = (page: ReportSetting['page']) =>
    reportFiles(assessed.value, asked, { page, date: '2026-03-14T00:00:00Z' });
  const text = resultsText(assessed.value);

  it.each(['A4', 'Letter'] as const)('keeps every rule for archives and for readers on %s', async (page) => {
    const { files } = await made(page);
    expect(await faultsOf(files[0]!.bytes)).toEqual({});
  });

  it('carries every input as it was read, the tables in force, the results and what explains them', async () => {
    const { files } = await made('A4');
    const carried = new Map((await attachedFiles(files[0]!.bytes))!.map((file) => [file.name, file.bytes]));
    for (const input of asked.files)
      expect(Buffer.from(carried.get(input.name)!).equals(input.bytes), input.name).toBe(true);
    const texts = {
      ...Object.fromEntries(besides.map((file) => [file, templates[file]])),
      'results.json': text,
    };
    for (const [file, expected] of Object.entries(texts))
      expect(Buffer.from(carried.get(file)!).toString('utf8') === expected, file).toBe(true);
    expect([...carried.keys()]).toEqual(
      [
        ...asked.files.map((file) => file.name),
        ...Object.keys(texts),
        'csv-metadata.json',
        'rerun.json',
      ].sort(),
    );
  });

  it('prints no number on page one that is not in the results', async () => {
    const { files } = await made('A4');
    const { count, unfound } = lookUpPageOne(await openPdf(files[0]!.bytes), JSON.parse(text) as Results);
    expect(unfound).toEqual([]);
    expect(count).toBeGreaterThan(100);
  });

  it('is found out when a number of the results is another than the one printed', async () => {
    const { files } = await made('A4');
    const other = JSON.parse(text) as Results;
    const [first] = other.candidates;
    first!.nominal.bodyMassKg = 9;
    other.figuresGiven += 10;
    const { unfound } = lookUpPageOne(await openPdf(files[0]!.bytes), other);
    expect(unfound.length).toBeGreaterThanOrEqual(2);
  });
});
