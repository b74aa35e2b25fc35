import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Logged, type LogRequest, logDay } from '../../src/app/records-log.js';
import { findingOf, loggedData, loggedText } from '../../src/app/records-log-text.js';
import { typedMeasurements } from '../../src/app/records-measured.js';
import { predictions } from '../../src/app/records-predicted.js';
import { misfit, suspects } from '../../src/app/records-suspects.js';
import { readArchive } from '../../src/archive/read-archive.js';
import { withValueAt } from '../../src/assess/value-at-path.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import type { Result } from '../../src/problem/issue.js';
import { quantile } from '../../src/quantity/quantile.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import type { MeasuredQuantity, Measurement } from '../../src/study/choosing.js';
import type { Candidate, Study } from '../../src/study/study.js';
import { emptyFolder, quickDisk, textsBelow } from './fixture.js';
import { decided, decideRequest, smallStudy } from './small-study.js';

const sketch = (study: Study, candidate: Candidate) => simulateCandidate(study, candidate, 'sketch');

function theStudy(): Study {
  const read = readStudy(smallStudy(), readAssumptions(), []);
  if (!read.ok) throw new Error('the study has errors');
  return read.value;
}

const study = theStudy();
const servo = study.candidates.find(({ id }) => id === 'servo-now')!;
const servoIn = (of: Study) => of.candidates.find(({ id }) => id === 'servo-now')!;

/** What would be read on instruments if one input were not what the study says. */
function readings(path: string, share: number, quantities: MeasuredQuantity[]): Measurement[] {
  const history = study.provenance.find((entry) => entry.path === path)!;
  const truth = withValueAt(study, path, quantile(history.spread, history.value as number, share))!;
  const read = predictions(truth, sketch(truth, servoIn(truth)));
  return quantities.map((quantity) => ({
    quantity,
    value: read[quantity]!,
    halfWidth: Math.abs(read[quantity]!) * 0.02,
    note: '',
  }));
}

describe('the input that was wrong', () => {
  it.each([
    ['pack.capacityC', 0.2, ['runtime', 'hold_current', 'loop_charge']],
    ['candidates.servo-now.typical.holdFrictionFraction', 0.8, ['runtime', 'hold_current']],
    ['candidates.servo-now.sheet.noLoadSpeed', 0.15, ['move_time', 'hold_current']],
  ] as const)('%s is found from what it does to the readings', (path, share, quantities) => {
    const [first] = suspects(study, servo, readings(path, share, [...quantities]), sketch);
    expect(first?.provenance.path).toBe(path);
    expect(first!.explainedFraction).toBeGreaterThan(0.9);
    const history = first!.provenance;
    const truth = quantile(history.spread, history.value as number, share);
    expect(Math.abs(first!.value / truth - 1)).toBeLessThan(0.1);
  });

  it('stays inside its 10–90 %, however far off the reading is', () => {
    const measured: Measurement[] = [{ quantity: 'runtime', value: 600, halfWidth: 30, note: '' }];
    const found = suspects(study, servo, measured, sketch);
    for (const { provenance, value } of found) {
      const at = (share: number) => quantile(provenance.spread, provenance.value as number, share);
      expect(value).toBeGreaterThanOrEqual(at(0.1) - 1e-12);
      expect(value).toBeLessThanOrEqual(at(0.9) + 1e-12);
    }
    expect(found[0]!.explainedFraction).toBeLessThan(0.9);
  });

  it('belongs to the drive that was measured, or to what all share', () => {
    const measured = readings('pack.capacityC', 0.1, ['runtime']);
    const found = suspects(study, servo, measured, sketch);
    expect(found.length).toBeGreaterThan(3);
    expect(found.filter(({ provenance }) => provenance.path.includes('worm-driver'))).toEqual([]);
  });

  it('is nobody when every reading is as predicted', () => {
    const read = predictions(study, sketch(study, servo));
    const measured: Measurement[] = [{ quantity: 'runtime', value: read.runtime!, halfWidth: 60, note: '' }];
    expect(misfit(read, measured)).toBe(0);
    expect(suspects(study, servo, measured, sketch)).toEqual([]);
  });

  it('is not guessed from what nobody predicts', () => {
    expect(
      findingOf(study, [{ quantity: 'runtime', written: '', value: 1, halfWidth: 1, predicted: null }], []),
    ).toBe('Nothing that was measured is predicted.');
    expect(
      findingOf(study, [{ quantity: 'runtime', written: '', value: 1, halfWidth: 1, predicted: 1.5 }], []),
    ).toMatch(/agree/);
    expect(
      findingOf(study, [{ quantity: 'runtime', written: '', value: 1, halfWidth: 0.1, predicted: 9 }], []),
    ).toMatch(/No input explains/);
  });
});

describe('what can be measured is predicted', () => {
  it('for a drive that plays the show', () => {
    const read = predictions(study, sketch(study, servo));
    for (const [quantity, value] of Object.entries(read)) expect(value, quantity).toBeGreaterThan(0);
  });
});

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
    const stuck = smallStudy({ 'show.csv': (text) => text.replace(/^.*rest.*$/gm, '#') });
    const record = await decided(
      decideRequest(emptyFolder(), stuck, { choose: 'servo-now', decision: 'keep' }),
    );
    const result = logDay(
      quickDisk,
      request({ archive: dirname(record), record: basename(record), typed: ['rest_current=12 mA'] }),
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
