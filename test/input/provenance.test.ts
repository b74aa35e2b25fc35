import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { driveKinds } from '../../src/drives/columns.js';
import { starterStudy } from '../../src/input/starter-study.js';
import type { Study } from '../../src/study/study.js';
import { type Files, goodFiles, historyOf, studyIn, withFile } from './good-study.js';

/** What a path leads to: lists are entered by id, measurements by quantity. */
function valueAt(study: Study, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => {
    if (Array.isArray(at) && !/^\d+$/.test(key))
      return at.find((entry) => (entry.id ?? entry.quantity) === key);
    return (at as Record<string, unknown>)[key];
  }, study);
}

const demo = new URL('../../data-demo/lantern-parade/', import.meta.url);
const demoFiles: Files = Object.fromEntries(
  readdirSync(demo).map((name) => [name, readFileSync(new URL(name, demo), 'utf8')]),
);
const studies: [name: string, study: Study][] = [
  ['the least study', studyIn(goodFiles)],
  ['the demo', studyIn(demoFiles)],
  [
    'the starter of all types',
    studyIn(Object.fromEntries(starterStudy(driveKinds).map(({ name, text }) => [name, text]))),
  ],
  [
    'a study with measurements, loads and two voltages',
    studyIn({
      ...goodFiles,
      'measured.csv': 'quantity,value\nruntime,80 min\ncase_temperature,45 °C\nhold_current,0.6 A ±50 mA\n',
      'loads.csv': 'id,power,converter_efficiency\nlamps,3 W,0.8..0.9\n',
      'candidates.csv': `${goodFiles['candidates.csv']}servo-a,,6 V,0.25 s/60deg,28 kg·cm,,3 A,,\n`,
    }),
  ],
];

describe.each(studies)('in %s', (_name, study) => {
  it('every path leads to its value', () => {
    for (const { path, value } of study.provenance) {
      const found = valueAt(study, path);
      const plain = typeof found === 'object' && found !== null && 'id' in found ? found.id : found;
      expect(plain, path).toEqual(value);
    }
  });

  it('every value has one history', () => {
    const paths = study.provenance.map(({ path }) => path);
    expect(paths.filter((path, index) => paths.indexOf(path) !== index)).toEqual([]);
  });

  it('a given value has its place and words, an assumed one its basis', () => {
    for (const { origin, place, written, basis, path, shown } of study.provenance) {
      expect(shown, path).not.toBe('');
      if (origin === 'given') {
        expect(place, path).not.toBeNull();
        expect(written, path).not.toBeNull();
      } else {
        expect(basis, path).not.toBe('');
        expect(written, path).toBeNull();
      }
    }
  });

  it('every spread holds its nominal figure, or is a factor that leans on purpose', () => {
    for (const { spread, value, path } of study.provenance) {
      if (spread === null || !('low' in spread)) continue;
      expect(spread.low, path).toBeLessThanOrEqual(value as number);
      expect(spread.high, path).toBeGreaterThanOrEqual((value as number) * (1 - 1e-12));
    }
  });
});

describe('default spreads by where figures come from', () => {
  const spreadOf = (from: string, column: string) => {
    const files = withFile(
      'candidates.csv',
      `id,type,rated_voltage,no_load_speed,stall_torque,stall_current,mass,figures_from\nservo-a,position-servo,7.4 V,10 rad/s,2 N·m,4 A,80 g,${from}\n`,
    );
    return historyOf(studyIn(files), `candidates.servo-a.sheet.${column}`).spread;
  };

  it('flatter a listing, and trust a measurement', () => {
    expect(spreadOf('listing', 'stallEffort')).toEqual({
      shape: 'triangular',
      low: 1.2,
      mode: 1.7,
      high: 2.1,
    });
    expect(spreadOf('listing', 'noLoadSpeed')).toEqual({ shape: 'triangular', low: 8, mode: 9.5, high: 11 });
    expect(spreadOf('', 'stallCurrentA')).toEqual({
      shape: 'triangular',
      low: 3.2,
      mode: 4,
      high: expect.closeTo(5.6, 12),
    });
    expect(spreadOf('data-sheet', 'stallEffort')).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(0.2, 12),
    });
    expect(spreadOf('measured', 'noLoadSpeed')).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(0.3, 12),
    });
    expect(spreadOf('measured', 'massKg')).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(0.0008, 12),
    });
    expect(spreadOf('listing', 'ratedVoltageV')).toBeNull();
  });

  it('give way to a spread that is written', () => {
    const files = withFile(
      'candidates.csv',
      (goodFiles['candidates.csv'] as string).replace('80 g', '80 g ±1 g'),
    );
    expect(historyOf(studyIn(files), 'candidates.servo-a.sheet.massKg').spread).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(0.001, 12),
    });
  });

  it('widen a pack label, and the resistance that its C label promises', () => {
    const labelled = studyIn(
      withFile('packs.csv', 'id,chemistry,cells,capacity,discharge_rating\npack-a,lipo,2,2000 mAh,20C\n'),
    );
    expect(historyOf(labelled, 'pack.capacityC').spread).toEqual({
      shape: 'triangular',
      low: 5400,
      mode: 6480,
      high: 7200,
    });
    expect(historyOf(labelled, 'pack.dischargeRatingPerH').spread).toEqual({
      shape: 'uniform',
      low: 10,
      high: 40,
    });
    expect(historyOf(studyIn(goodFiles), 'pack.chemistry.resistanceChargeOhmC').spread).toMatchObject({
      low: 216,
      high: 612,
    });
  });

  it('give a servo’s pulse frequency a wide range about its usual one', () => {
    const history = historyOf(studyIn(goodFiles), 'candidates.servo-a.sheet.pulseFrequencyHz');
    expect(history).toMatchObject({ value: 2000, spread: { shape: 'uniform', low: 300, high: 20000 } });
  });

  it('take 5 % of what an instrument shows, in its own unit', () => {
    const measured = studyIn(
      withFile(
        'measured.csv',
        'quantity,value,unit\ncase_temperature,45,°C\nruntime,80,\nhold_current,0.5..0.7 A,\n',
      ),
    ).measured;
    expect(measured.map(({ quantity, halfWidth }) => [quantity, halfWidth])).toEqual([
      ['case_temperature', expect.closeTo(2.25, 12)],
      ['runtime', expect.closeTo(240, 9)],
      ['hold_current', expect.closeTo(0.095, 12)],
    ]);
  });
});
