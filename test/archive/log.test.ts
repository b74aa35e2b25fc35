import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Logged, type LogRequest, logDay } from '../../src/app/records-log.js';
import { loggedData, loggedText } from '../../src/app/records-log-text.js';
import { typedMeasurements } from '../../src/app/records-measured.js';
import { readArchive } from '../../src/archive/read-archive.js';
import type { Result } from '../../src/problem/issue.js';
import { emptyFolder, quickDisk, textsBelow } from './fixture.js';
import { decided, decideRequest, smallStudy } from './small-study.js';

describe('typed measurements', () => {
  it('are read as measured.csv is, with a spread of their own or the usual one', () => {
    const read = typedMeasurements(['runtime=95', 'hold_current = 310 mA ±10', 'loop_charge=12,5 mAh']);
    expect(read.ok && read.value.map(({ value }) => value)).toEqual([5700, 0.31, 45]);
    expect(read.ok && read.value[0]!.halfWidth).toBeCloseTo(285, 6);
    expect(read.ok && read.value[1]).toMatchObject({ written: '310 mA ±10' });
    expect(read.ok && read.value[1]!.halfWidth).toBeCloseTo(0.01, 9);
  });

  it.each([
    [[], 'not-a-measurement'],
    [['runtime'], 'not-a-measurement'],
    [['=5 min'], 'not-a-measurement'],
    [['runtme=95 min'], 'unknown-choice'],
    [['runtime=95 mA'], 'unit-of-another-dimension'],
    [['runtime=95 min', 'runtime=96 min'], 'measured-twice'],
    [['hold_current="; drop'], 'not-a-number'],
  ])('%j is told: %s', (typed, code) => {
    const read = typedMeasurements(typed);
    expect(read.ok).toBe(false);
    expect(read.issues.map((issue) => issue.code)).toContain(code);
    expect(read.issues.every(({ file, line }) => file === '--log' && line === null)).toBe(true);
  });
});

describe('a day in the log', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await decided(
      decideRequest(emptyFolder(), smallStudy(), { choose: 'servo-now', decision: 'keep' }),
    );
  });
  const request = (changes: Partial<LogRequest> = {}): LogRequest => ({
    archive: dirname(folder),
    record: basename(folder),
    typed: ['runtime=60 min', 'hold_current=0.5 A'],
    on: null,
    date: '2026-05-01',
    by: 'A. Maker',
    note: 'cold evening\u001b[2J',
    templates: {},
    version: '0.1.0',
    now: '2026-05-01T20:00:00Z',
    progress() {},
    ...changes,
  });
  const value = (result: Result<Logged>): Logged => {
    if (!result.ok) throw new Error('refused');
    return result.value;
  };

  it('stands beside the record, which stays as it was; each day has a file of its own', () => {
    const before = textsBelow(folder);
    const logged = value(logDay(quickDisk, request()));
    if (logged.log === null) throw new Error(logged.why);
    expect(logged.file).toBe(`${basename(folder)}.log-1.json`);
    expect(logged.candidate.id).toBe('servo-now');
    expect(textsBelow(folder)).toEqual(before);
    const first = readFileSync(join(dirname(folder), logged.file), 'utf8');
    value(
      logDay(
        quickDisk,
        request({ typed: ['case_temperature=41 °C'], record: `records\\${basename(folder)}\\` }),
      ),
    );
    expect(readFileSync(join(dirname(folder), logged.file), 'utf8')).toBe(first);
    const state = readArchive(quickDisk, dirname(folder))!;
    expect(state.issues).toEqual([]);
    expect(state.records[0]!.logs.map(({ measured }) => measured.length)).toEqual([2, 1]);
  });

  it('is told in 80 columns: predicted, measured, how far off, and what was most likely wrong', () => {
    const logged = value(logDay(quickDisk, request()));
    if (logged.log === null) throw new Error(logged.why);
    const text = loggedText(logged, 80);
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(text).toMatch(/^runtime +76\.\d min +60 min +−2\d %/m);
    expect(text).toMatch(/(Most likely wrong is|No single input)/);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
    expect(text + JSON.stringify(logged.log.finding)).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    expect(loggedData(logged)).toMatchObject({ log: { note: 'cold evening\u001b[2J' } });
  });

  it('of a stranger is refused, with everything that is wrong', () => {
    const before = readdirSync(dirname(folder));
    const result = logDay(quickDisk, request({ record: 'nobody', typed: ['x=1'], date: 'soon' }));
    expect(value(result)).toEqual({ log: null, why: 'usage' });
    expect(result.issues.map(({ code }) => code)).toEqual(['unknown-choice', 'not-a-date', 'unknown-record']);
    const other = logDay(quickDisk, request({ on: 'worm-drive' }));
    expect(other.issues.map(({ code, hint }) => [code, hint])).toEqual([
      ['unknown-candidate', 'did you mean worm-driver?'],
    ]);
    expect(readdirSync(dirname(folder))).toEqual(before);
  });

  it('keeps a reading that nobody predicts, and says so', async () => {
    const stuck = smallStudy({ 'study.csv': (text) => text.replace('860 g ±25 g', '9 kg ±25 g') });
    const record = await decided(
      decideRequest(emptyFolder(), stuck, { choose: 'servo-now', decision: 'keep' }),
    );
    const result = logDay(
      quickDisk,
      request({ archive: dirname(record), record: basename(record), typed: ['runtime=12 min'] }),
    );
    expect(result.issues.map(({ code }) => code)).toEqual(['not-predicted']);
    expect(value(result).log).not.toBeNull();
  });

  it('that was changed afterwards is told by its file', () => {
    const logged = value(logDay(quickDisk, request()));
    if (logged.log === null) throw new Error(logged.why);
    const path = join(dirname(folder), logged.file);
    writeFileSync(path, readFileSync(path, 'utf8').replace('"value": 3600', '"value": 7200'));
    const { issues } = readArchive(quickDisk, dirname(folder))!;
    expect(issues.map(({ file, code }) => `${file} ${code}`)).toEqual([`${logged.file} unreadable-log`]);
  });

  it('of a damaged record is refused', async () => {
    const record = await decided(decideRequest(emptyFolder(), smallStudy()));
    writeFileSync(join(record, 'data/inputs/study.csv'), 'item,value\n');
    const result = logDay(quickDisk, request({ archive: dirname(record), record: basename(record) }));
    expect(value(result)).toEqual({ log: null, why: 'input' });
  });
});
