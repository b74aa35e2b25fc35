import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { benchWork } from '../../src/assess/bench-work.js';
import { measurementAdvice } from '../../src/assess/measurements.js';
import { valueAt, withValueAt } from '../../src/assess/value-at-path.js';
import type { Spread } from '../../src/quantity/spread.js';
import type { Provenance } from '../../src/study/provenance.js';
import type { Candidate, Study } from '../../src/study/study.js';
import { candidate, criterion, run, study } from './hand-made.js';

const spreadOf = (path: string, field: string, spread: Spread, value = 1): Provenance => ({
  path,
  field,
  owner: null,
  origin: 'given',
  written: null,
  shown: '',
  value,
  basis: '',
  spread,
  place: null,
});
const about = (half: number): Spread => ({ shape: 'uniform', low: 1 - half, high: 1 + half });

/** Runtime falls with the mass of the feature and grows with the capacity; the worm needs less of both. */
function simulate(changed: Study, { id, sheet }: Candidate) {
  const perHourC = id === 'worm' ? 1000 : 2000 * changed.feature.massKg;
  return run(id, { runtimeS: (3600 * changed.pack.capacityC) / perHourC, bodyMassKg: sheet.massKg });
}

const howToMeasure = (field: string) => ({ meaning: `meaning of ${field}`, how: `how to find ${field}` });

function advise(provenance: Provenance[], changes: Partial<Study> = {}) {
  const candidates = [candidate('now'), candidate('worm')];
  const criteria = [criterion('runtime', 1, [0, 36000])];
  const of = study(candidates, criteria, { baselineId: 'now', provenance, ...changes });
  const runs = candidates.map((entry) => simulate(of, entry));
  const { candidates: ranked } = assess(of, runs, { version: '0', inputHash: '', inputs: [] });
  return measurementAdvice(of, ranked, { simulate, howToMeasure });
}

describe('what to measure first', () => {
  it('orders inputs by what their range does to the lead', () => {
    const advice = advise([
      spreadOf('feature.massKg', 'feature.mass', about(0.1)),
      spreadOf('feature.balanceDistanceM', 'feature.balance_distance', about(0.5)),
      spreadOf('feature.massKg', 'feature.mass', about(0.4)),
    ]);
    expect(advice.map(({ field }) => field)).toEqual(['feature.mass', 'feature.mass']);
    expect(advice[0]!.swing).toBeGreaterThan(advice[1]!.swing);
  });

  it('the swing is the change of the lead in score between the 10 % and the 90 % point', () => {
    const [advice] = advise([spreadOf('feature.massKg', 'feature.mass', about(0.4))]);
    // Mass 0.68 and 1.32 kg: the present drive runs 12960 s / mass, on a scale of 36000 s.
    expect(advice!.swing).toBeCloseTo(0.36 / 0.68 - 0.36 / 1.32, 12);
  });

  it('names the outcome, the instrument, the minutes and the method', () => {
    const [advice] = advise([spreadOf('feature.massKg', 'feature.mass', about(0.4))]);
    expect(advice).toMatchObject({
      instrument: 'kitchen scale',
      minutes: 5,
      method: 'how to find feature.mass',
      candidate: null,
    });
    expect(advice!.why).toMatch(/^moves the lead of worm over now by 0\.26 of the score/);
  });

  it('puts first what decides whether a candidate passes', () => {
    const criteria = [
      criterion('runtime', 1, [0, 36000]),
      criterion('body_mass', 0, null, { direction: 'at-most', bound: 0.21 }),
    ];
    const advice = advise(
      [
        spreadOf('feature.massKg', 'feature.mass', about(0.5)),
        spreadOf('candidates.worm.sheet.massKg', 'mass', { shape: 'uniform', low: 0.15, high: 0.25 }, 0.2),
      ],
      { criteria },
    );
    expect(advice[0]).toMatchObject({ field: 'mass', candidate: 'worm' });
    expect(advice[0]!.why).toMatch(/decides whether worm passes/);
  });

  it('leaves out what nobody can measure, what is exact, and what belongs to others', () => {
    const fields = [
      spreadOf('hourPriceMoney', 'hour_price', about(0.5)),
      spreadOf('feature.massKg', 'feature.mass', { shape: 'exact' }),
      spreadOf('candidates.other.sheet.massKg', 'mass', about(0.5)),
    ];
    expect(advise(fields)).toEqual([]);
    expect(benchWork('price')).toBeNull();
    expect(benchWork('constructor')).toBeNull();
  });
});

describe('a value by its path', () => {
  const of = study([candidate('a.1'), candidate('a')], []);

  it('is found in the study, in a candidate, and where an id has dots', () => {
    expect(valueAt(of, 'feature.massKg')).toBe(1);
    expect(valueAt(of, 'candidates.a.1.sheet.massKg')).toBe(0.2);
  });

  it('is changed without touching the original', () => {
    const changed = withValueAt(of, 'candidates.a.sheet.massKg', 9);
    expect(changed?.candidates.map(({ sheet }) => sheet.massKg)).toEqual([0.2, 9]);
    expect(valueAt(of, 'candidates.a.sheet.massKg')).toBe(0.2);
  });

  it('is null where the path leads nowhere', () => {
    expect(withValueAt(of, 'candidates.b.sheet.massKg', 1)).toBeNull();
    expect(valueAt(of, 'feature.__proto__.x')).toBeNull();
    expect(valueAt(of, 'feature.kind')).toBeNull();
  });
});
