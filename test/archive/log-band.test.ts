import { readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Logged, logDay } from '../../src/app/records-log.js';
import { loggedData, loggedText } from '../../src/app/records-log-text.js';
import { recordsText } from '../../src/app/records-text.js';
import { readArchive } from '../../src/archive/read-archive.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { emptyFolder, quickDisk } from './fixture.js';
import { drawnTools, filedResults, measuredStudy, poorReadings, studyFrom } from './measured-study.js';
import { decided, decideRequest, tools } from './small-study.js';

type Kept = Exclude<Logged, { log: null }>;

function logged(folder: string, typed: string[]): Kept {
  const result = logDay(quickDisk, {
    archive: dirname(folder),
    record: basename(folder),
    typed,
    on: null,
    date: '2026-05-01',
    by: '',
    note: '',
    templates: {},
    version: '0.1.0',
    now: '2026-05-01T20:00:00Z',
    progress() {},
  });
  if (!result.ok || result.value.log === null) throw new Error('nothing was logged');
  return result.value;
}

const words = { choose: 'tail-servo', decision: 'keep', because: 'it was there' } as const;
const study = measuredStudy({ 'measured.csv': () => poorReadings });

describe('a day held against a record with draws', { timeout: 120_000 }, () => {
  let folder: string;
  let servo: { uncertain: Record<string, Record<string, number>> };
  beforeAll(async () => {
    folder = await decided(decideRequest(emptyFolder(), study, words), drawnTools);
    servo = filedResults(folder).candidates.find(({ id }: { id: string }) => id === 'tail-servo');
  }, 120_000);
  const minutesOf = (timeS: number) => `${(timeS / 60).toFixed(1)} min ±1 min`;

  it('agrees at the calibrated median as filed, and not at what the listings promised', () => {
    const { median, p10, p90 } = servo.uncertain.runtimeS!;
    const { log, suspects } = logged(folder, [`runtime=${minutesOf(median!)}`]);
    expect(log.measured[0]).toMatchObject({ predicted: median, band: { p10, p90 } });
    expect([log.basis, suspects]).toEqual(['draws', []]);
    expect(log.finding).toMatch(/agree: inside/);
    const listed = studyFrom(measuredStudy());
    const drive = listed.candidates.find(({ id }) => id === 'tail-servo')!;
    const promisedS = simulateCandidate(listed, drive).nominal.runtimeS!;
    expect(promisedS).toBeGreaterThan(p90! + 120);
    const promised = logged(folder, [`runtime=${minutesOf(promisedS)}`]);
    expect(promised.log.finding).toMatch(/(Most likely wrong|No single input)/);
    expect(promised.suspects.length).toBeGreaterThan(0);
    expect(loggedData(promised)).toMatchObject({ places: { runtime: 'above' } });
  });

  it('is told in 80 columns with the band, and where the reading lies', () => {
    const kept = logged(folder, ['runtime=45 min', 'hold_current=0.93 A', 'move_time=1 s']);
    const text = loggedText(kept, 80);
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(text).toMatch(/^runtime +6\d\.?\d* min +5\d\.?\d*–6\d\.?\d* min +45 min +−\d+ % {2}below$/m);
    expect(text).toMatch(/^hold_current .* inside$/m);
    expect(text.replaceAll(/\n */g, ' ')).toContain(
      'median of the 512 draws of the record, after calibration by its measured.csv.',
    );
  });

  it('has bands for what results.json does not name too: those of the same draws', () => {
    const { median, p10, p90 } = servo.uncertain.loopS!;
    const [measured] = logged(folder, ['move_time=9 s']).log.measured;
    expect(measured!.predicted).toBeCloseTo(median! - 65, 6);
    expect(measured!.band!.p90 - measured!.band!.p10).toBeCloseTo(p90! - p10!, 6);
  });

  it('is listed with its band, and a log whose band was changed afterwards is not', () => {
    const { file } = logged(folder, ['runtime=45 min']);
    const archive = () => readArchive(quickDisk, dirname(folder))!;
    expect(recordsText(archive(), 80, '2026-06-01')).toMatch(/runtime 45 min \(predicted 6\d\.?\d* min, 5/);
    const path = join(dirname(folder), file);
    writeFileSync(path, readFileSync(path, 'utf8').replace(/"p10": \d+/, '"p10": 1'));
    expect(archive().issues.map(({ code }) => code)).toEqual(['unreadable-log']);
  });
});

describe('a day held against a record without draws', () => {
  it('falls back to the nominal figure as filed, and says so', async () => {
    const folder = await decided(decideRequest(emptyFolder(), study, words), tools);
    const [servo] = filedResults(folder).candidates;
    const kept = logged(folder, ['runtime=60 min']);
    expect(kept.log).toMatchObject({
      basis: 'nominal',
      measured: [{ predicted: servo.nominal.runtimeS, band: null }],
    });
    const text = loggedText(kept, 80);
    expect(text).toContain('Predicted: nominal figures');
    expect(text).not.toContain('10–90 %');
  });
});
