import { appendFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Reopened, type ReopenRequest, reopen } from '../../src/app/reopen.js';
import { reopenedData, reopenedText } from '../../src/app/reopen-text.js';
import type { Result } from '../../src/problem/issue.js';
import { emptyFolder, quickDisk } from './fixture.js';
import { assumptionsTable, decided, decideRequest, quickAssess, smallStudy } from './small-study.js';

const table = assumptionsTable();
const request = (record: string, changes: Partial<ReopenRequest> = {}): ReopenRequest => ({
  record,
  files: null,
  templates: { 'assumptions.csv': table },
  version: '0.1.0',
  progress() {},
  ...changes,
});

function opened(result: Result<Reopened>): Reopened {
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
}

describe('a record opened again', () => {
  let record: string;
  beforeAll(async () => {
    const filing = decideRequest(emptyFolder(), smallStudy(), { lookAgain: '2026-09-01' });
    record = await decided({ ...filing, templates: { 'assumptions.csv': table } });
  });

  it('with the same program is the same to the last digit', () => {
    const now = opened(reopen(request(record), quickDisk, quickAssess));
    expect(now.files.every(({ state }) => state === 'same')).toBe(true);
    expect(now.figures).toEqual([]);
    expect(now.inputHash.later).toBe(now.inputHash.earlier);
    expect(now.ranking.later).toEqual(now.ranking.earlier);
    expect(now.assumptionsDiffer).toBe(false);
    const text = reopenedText(now, 80, '2026-05-01');
    expect(text).toMatch(/Results +nothing moved/);
    expect(text).toMatch(/Look again +on 2026-09-01/);
    expect(reopenedText(now, 80, '2026-09-01')).toMatch(/Look again +was due on 2026-09-01/);
  });

  it('is found by a path with a separator at its end, and from inside its archive', () => {
    expect(reopen(request(`${record}/`), quickDisk, quickAssess).ok).toBe(true);
    expect(reopen(request(join(record, '..', record.split('/').at(-1)!)), quickDisk, quickAssess).ok).toBe(
      true,
    );
  });

  it('with other assumptions in the program is computed with its own', () => {
    const other = table.replace('0..0.15..0.8', '0..0.6..0.8');
    expect(other).not.toBe(table);
    const now = opened(
      reopen(request(record, { templates: { 'assumptions.csv': other } }), quickDisk, quickAssess),
    );
    expect(now.assumptionsDiffer).toBe(true);
    expect(now.figures).toEqual([]);
    expect(reopenedText(now, 80, '2026-05-01')).toMatch(/differs by now/);
  });

  it('with a program that computes otherwise names what moved, candidate by candidate', () => {
    const newer = (again: Parameters<typeof quickAssess>[0]) => {
      const result = quickAssess(again);
      if (!result.ok) return result;
      const candidates = result.value.candidates.map((candidate) =>
        candidate.id === 'servo-now'
          ? { ...candidate, nominal: { ...candidate.nominal, runtimeS: 9000 } }
          : candidate,
      );
      return {
        ...result,
        value: { ...result.value, candidates: candidates.reverse(), modelVersion: 'other' },
      };
    };
    const now = opened(reopen(request(record, { version: '0.2.0' }), quickDisk, newer));
    expect(now.figures?.map(({ candidate, figure, later }) => [candidate, figure, later])).toEqual([
      ['servo-now', 'runtime', 9000],
    ]);
    const text = reopenedText(now, 80, '2026-05-01');
    expect(text).toMatch(/Program +0\.1\.0 then, 0\.2\.0 now/);
    expect(text).toMatch(/Model +\d+ then, other now/);
    expect(text).toMatch(/Servo as built: runtime 76 min → 150 min/);
    expect(text).toMatch(/Verdict +the same: Change to Worm/);
    expect(text).toMatch(/Ranking +was worm-driver, servo-now\n +is servo-now, worm-driver/);
  });

  it('against the study of today names files, values, results and what became of the choice', () => {
    const files = smallStudy({
      'study.csv': (text) =>
        text.replace('860 g ±25 g', '1.4 kg ±25 g').replace('target.runtime,120', 'target.runtime,60'),
      'candidates.csv': (text) => text.replace('90 kg·cm', '31 kg·cm'),
    }).filter(({ name }) => name !== 'day.csv');
    const more = [
      ...files,
      { name: 'measured.csv', bytes: new TextEncoder().encode('quantity,value\nruntime,70 min\n') },
    ];
    const now = opened(reopen(request(record, { files: more }), quickDisk, quickAssess));
    const states = Object.fromEntries(now.files.map(({ name, state }) => [name, state]));
    expect(states).toMatchObject({
      'study.csv': 'changed',
      'candidates.csv': 'changed',
      'show.csv': 'same',
      'day.csv': 'gone',
      'measured.csv': 'new',
    });
    const names = now.values.map(({ name }) => name);
    expect(names).toEqual(
      expect.arrayContaining([
        'feature.mass',
        'target.runtime',
        'stall_torque of worm-driver',
        'measured runtime',
      ]),
    );
    expect(now.choice.later?.passes).toBe(false);
    const text = reopenedText(now, 80, '2026-05-01');
    expect(text).toMatch(/Verdict +was: Change to Worm/);
    expect(text).toMatch(/was number 1 and passes every limit; is number 2 and fails a/);
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(() => JSON.stringify(reopenedData(now))).not.toThrow();
  });

  it('whose choice is no candidate any more says so', () => {
    const files = smallStudy({
      'candidates.csv': (text) =>
        text
          .split('\n')
          .filter((line) => !line.startsWith('worm-driver'))
          .join('\n'),
    });
    const now = opened(reopen(request(record, { files }), quickDisk, quickAssess));
    expect(reopenedText(now, 80, '2026-05-01')).toMatch(/is no candidate any more/);
  });

  it('that is damaged is told file by file and not computed', async () => {
    const hurt = await decided(decideRequest(emptyFolder(), smallStudy()));
    appendFileSync(join(hurt, 'data/inputs/study.csv'), 'feature.mass,1 g\n');
    const result = reopen(request(hurt), quickDisk, quickAssess);
    expect(result.ok).toBe(false);
    expect(result.issues.map(({ file, code }) => `${file} ${code}`)).toEqual([
      '2026-03-14-adopt-worm-driver/bag-info.txt wrong-count',
      '2026-03-14-adopt-worm-driver/data/inputs/study.csv changed-file',
    ]);
  });

  it('that does not exist has a nearest name', () => {
    const result = reopen(request(record.replace('worm', 'wurm')), quickDisk, quickAssess);
    expect(result.issues[0]).toMatchObject({
      code: 'unknown-record',
      hint: 'did you mean 2026-03-14-adopt-worm-driver?',
    });
  });

  it('named without the folder of its archive is found in it', async () => {
    const parent = emptyFolder();
    const filed = await decided(decideRequest(join(parent, 'records'), smallStudy()));
    const result = reopen(request(join(parent, basename(filed))), quickDisk, quickAssess);
    expect(result.issues[0]).toMatchObject({ hint: `did you mean records/${basename(filed)}?` });
  });

  it('that is any other folder is no record', () => {
    const result = reopen(request(dirname(record)), quickDisk, quickAssess);
    expect(result.issues.map(({ code }) => code)).toEqual(['unknown-record']);
  });
});
