import { beforeAll, describe, expect, it } from 'vitest';
import { type Sheet, type SheetWish, safetySheet, sheetFiles, sheetText } from '../../src/app/sheet.js';
import { assessStudy, type ReportSetting } from '../../src/app/study.js';
import type { Assessment } from '../../src/assess/assessment.js';
import { type SafetyFigures, safetyFigures } from '../../src/assess/safety/safety-figures.js';
import { tipMotion } from '../../src/simulate/tip-motion.js';
import { readTemplates } from '../report/templates.js';
import { demoFiles, request } from './demo.js';

const templates = readTemplates();
const date = '2026-01-01T00:00:00Z';
const papers: ReportSetting['page'][] = ['A4', 'Letter'];
const wish: SheetWish = { candidate: null, page: 'A4', dateOf: () => date };

async function sheetOf(demo: string, changes: Partial<SheetWish> = {}, without = ''): Promise<Sheet> {
  const files = demoFiles(demo).map(({ name, bytes }) => ({
    name,
    bytes: Buffer.from(Buffer.from(bytes).toString().replace(without, '')),
  }));
  const result = await safetySheet({ ...request(files), templates }, { ...wish, ...changes });
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
}

function found(sheet: Sheet): Extract<Sheet, { found: true }> {
  if (!sheet.found) throw new Error('no such candidate');
  return sheet;
}

const pagesIn = (bytes: Uint8Array) =>
  Buffer.from(bytes)
    .toString('latin1')
    .match(/\/Type \/Page\b/g)?.length;

/** The drive of today of the lantern demo, assessed once for all. */
const lantern = { assessment: null as Assessment | null, safety: null as SafetyFigures | null };
beforeAll(() => {
  const assessed = assessStudy({ ...request(demoFiles('lantern-parade')), templates }, 'ranking');
  if (!assessed.ok) throw new Error('the demo has errors');
  const { value } = assessed;
  const drive = value.study.candidates.find(({ id }) => id === value.baseline)!;
  const today = value.candidates.find(({ id }) => id === value.baseline)!;
  lantern.assessment = value;
  lantern.safety = safetyFigures(value, today, tipMotion(value.study, drive));
}, 120_000);

/** The sheet with so many cautions and names so long, of many features. */
async function crowded(count: number, name: string, page: ReportSetting['page'], texts = templates) {
  const [assessment, safety] = [lantern.assessment!, lantern.safety!];
  const { about } = assessment.study;
  const long = { ...about, project: name, preparedBy: name, question: name };
  const cautions = Array.from({ length: count }, (_, index) => safety.cautions[index % 3]!);
  const study = { ...assessment.study, about: long };
  const figures = { ...safety, label: name, featureCount: 144, cautions };
  const setting = { page, date };
  return sheetFiles(
    { ...assessment, study },
    figures,
    { files: [], templates: texts, progress() {} },
    setting,
  );
}

describe('the safety sheet of a demo', { timeout: 120_000 }, () => {
  it.each([
    ['lantern-parade', 'A4'],
    ['stage-prop', 'A4'],
    ['stage-prop', 'Letter'],
  ] as const)('%s on %s is one page, of the drive that is built today', async (demo, page) => {
    const { files, safety, missingCharacters, headlines } = found(await sheetOf(demo, { page }));
    expect([files.map(({ name }) => name), safety.isBuilt]).toEqual([['safety-sheet.pdf'], true]);
    expect([pagesIn(files[0]!.bytes), missingCharacters, headlines.length]).toEqual([1, [], 6]);
  });

  it('says on the terminal what an organiser asks first, and where the sheet is', async () => {
    const safety = lantern.safety!;
    const { headlines } = await crowded(3, 'Heron', 'A4');
    const lines = sheetText(headlines, safety.label, 'out/safety-sheet.pdf', 80).split('\n');
    expect(lines[0]).toBe('Safety sheet of Servo as built');
    expect(lines[1]).toMatch(/^Without power: Falls \(in as little as 0\.\d+ s; up to \d/);
    expect(lines[2]).toMatch(/^It can crush with: up to \d+ N/);
    expect(lines[3]).toMatch(/^The tip moves at: 0\.5 m\/s/);
    expect(lines.at(-1)).toBe('Written to out/safety-sheet.pdf');
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  it('is of another candidate when asked, and names the nearest where nobody has the id', async () => {
    const other = found(await sheetOf('lantern-parade', { candidate: 'screw-strut' }));
    expect([other.safety.isBuilt, other.safety.powerCut.answer]).toEqual([false, 'stays']);
    const nobody = await sheetOf('lantern-parade', { candidate: 'screw-strt' });
    expect(nobody).toMatchObject({ found: false, nearest: 'screw-strut' });
  });

  it('is not made up where nothing is built today and nobody says which drive', async () => {
    const nothing = await sheetOf('lantern-parade', {}, 'baseline,servo-now,,');
    expect(nothing).toMatchObject({ found: false, nearest: null });
  });
});

describe('what does not fit on the page', { timeout: 120_000 }, () => {
  it.each([
    ['long words', 'Feature with a long name '.repeat(40)],
    ['names of a word', 'Heron'],
    ['names without a space', 'W'.repeat(900)],
    ['signs of another script', 'Ж'.repeat(900)],
  ])('%s and forty cautions: one page all the same', async (_, name) => {
    for (const page of papers) {
      const { files } = await crowded(40, name, page);
      expect(pagesIn(files[0]!.bytes)).toBe(1);
    }
  });

  it('is told as too long where the wording itself is longer than a page', async () => {
    const sheet = `${templates['report/sheet.md']}\n${'More and more.\n\n'.repeat(60)}`;
    await expect(crowded(2, 'Heron', 'A4', { ...templates, 'report/sheet.md': sheet })).rejects.toThrow(
      'templates/report/sheet.md, line 1: this is more than one page holds',
    );
  });
});
