import { describe, expect, it } from 'vitest';
import type { Judged } from '../../src/assess/criterion-values.js';
import { limitsOf, marginOf, passesAll } from '../../src/assess/limits.js';
import type { CandidateRun } from '../../src/simulate/outcome.js';
import type { Criterion, Limit } from '../../src/study/choosing.js';
import type { Study } from '../../src/study/study.js';
import { candidate, criterion, run, study } from './hand-made.js';

const atLeast = (bound: number) => ({ direction: 'at-least', bound }) as const;
const atMost = (bound: number) => ({ direction: 'at-most', bound }) as const;

function judged(criteria: Criterion[], changed: CandidateRun, sheet = {}, studyChanges = {}): Judged {
  const one = candidate('a', sheet);
  return { study: study([one], criteria, studyChanges), candidate: one, run: changed };
}

const limit = (of: Judged, name: string) => {
  const found = limitsOf(of).filter((outcome) => outcome.criterion === name);
  expect(found).toHaveLength(1);
  return found[0]!;
};

describe('margin of a limit', () => {
  it.each([
    ['40 min where at least 32 are asked is a quarter inside', 40, atLeast(32), 0.25],
    ['24 min where at least 32 are asked is a quarter outside', 24, atLeast(32), -0.25],
    ['exactly on the limit is inside by nothing', 32, atLeast(32), 0],
    ['0.8 kg where at most 1 kg is allowed is a fifth inside', 0.8, atMost(1), 0.2],
    ['1.5 kg where at most 1 kg is allowed is half outside', 1.5, atMost(1), -0.5],
  ])('%s', (_, value, bound, margin) => {
    expect(marginOf(value, bound)).toBeCloseTo(margin, 12);
  });

  it('of a temperature counts from the air', () => {
    expect(marginOf(333.15, atMost(373.15), 298.15)).toBeCloseTo(40 / 75, 12);
  });
});

describe('hard limits', () => {
  it('voltage and fit count even where the criteria are silent about them', () => {
    const names = limitsOf(judged([criterion('runtime', 1, [0, 1])], run('a'))).map(
      ({ criterion: name }) => name,
    );
    expect(names).toEqual(['voltage', 'fits']);
  });

  it('the torque margin counts where the criteria demand it, be they assumed, and not where it was taken out', () => {
    const margin = (must: Limit | null) =>
      ({ ...criterion('torque_margin', 0, null, must), origin: 'assumed' }) as const;
    const weak = run('a', { torqueMarginRatio: 1.2 });
    expect(limit(judged([margin(atLeast(1.1))], weak), 'torque_margin')).toMatchObject({
      limit: 1.1,
      passes: true,
    });
    expect(limitsOf(judged([margin(null)], weak)).map(({ criterion: name }) => name)).toEqual([
      'voltage',
      'fits',
    ]);
  });

  it('a criterion that repeats fit or voltage does not count twice', () => {
    const criteria = [criterion('fits', 0, null, atLeast(1)), criterion('voltage', 0, null, atLeast(1))];
    expect(limitsOf(judged(criteria, run('a')))).toHaveLength(2);
  });

  it('a voltage that is only assumed to be borne passes a drive, and rules none out', () => {
    const assumedOf = (busVoltageV: number) => {
      const of = judged([], run('a', { busVoltageV, maximumVoltageV: 7.5 }));
      const provenance = [{ path: 'candidates.a.sheet.maximumVoltageV', origin: 'assumed' }];
      return limit({ ...of, study: { ...of.study, provenance } as Study }, 'voltage');
    };
    expect(assumedOf(7.4)).toMatchObject({ passes: true });
    expect(assumedOf(8.4)).toMatchObject({ passes: null, missing: 'maximum_voltage', limit: 7.5 });
  });

  it('the voltage margin is the headroom under the highest voltage the drive bears', () => {
    const outcome = limit(judged([], run('a', { busVoltageV: 12.6, maximumVoltageV: 14 })), 'voltage');
    expect(outcome).toMatchObject({ direction: 'at-most', limit: 14, value: 12.6, passes: true });
    expect(outcome.margin).toBeCloseTo(0.1, 12);
  });

  it('the fit margin is the tightest side of the best of six orientations', () => {
    const space = { lengthM: 0.05, widthM: 0.125, heightM: 0.08 };
    const outcome = limit(judged([], run('a', { fits: true }), {}, { space }), 'fits');
    // 100 × 50 × 40 mm laid as 40, 100, 50: free shares 0.2, 0.2, 0.375.
    expect(outcome.margin).toBeCloseTo(0.2, 12);
  });

  it('a missing figure is not judged, names the field, and never passes', () => {
    const criteria = [criterion('body_mass', 1, [1, 0], atMost(1))];
    const of = judged(criteria, run('a', { bodyMassKg: null, fits: null }), { massKg: null, widthM: null });
    expect(limit(of, 'body_mass')).toMatchObject({ passes: null, margin: null, missing: 'mass' });
    expect(limit(of, 'fits')).toMatchObject({ passes: null, margin: null, missing: 'width' });
    expect(passesAll(limitsOf(of))).toBeNull();
  });

  it('the low end of the runtime is not judged without an ensemble', () => {
    const of = judged([criterion('runtime_p10', 0, null, atLeast(60))], run('a'));
    expect(limit(of, 'runtime_p10')).toMatchObject({ passes: null, missing: 'an ensemble of draws' });
  });

  it('a failed limit outweighs one that is not judged', () => {
    const of = judged([], run('a', { fits: null, busVoltageV: 16 }), { widthM: null });
    expect(passesAll(limitsOf(of))).toBe(false);
  });

  it('a drive that cannot move or hold fails with the reason, once for each way of failing', () => {
    const failures: CandidateRun['failures'] = [
      { code: 'moves', position: 0.7, reason: 'cannot move at 40°', value: null, limit: null },
      { code: 'moves', position: 0.9, reason: 'cannot move at 52°', value: null, limit: null },
      { code: 'linkage', position: 1, reason: 'needs 110 mm of stroke', value: 0.11, limit: 0.08 },
    ];
    const of = judged([], run('a', {}, { failures }));
    expect(limit(of, 'moves').reason).toBe('cannot move at 40°; cannot move at 52°');
    expect(limit(of, 'linkage')).toMatchObject({ direction: 'at-most', passes: false });
    expect(limit(of, 'linkage').margin).toBeCloseTo(-0.375, 12);
    expect(passesAll(limitsOf(of))).toBe(false);
  });

  it('a winding that never settles fails its limit', () => {
    const of = judged(
      [criterion('winding_temperature', 0, null, atMost(373.15))],
      run('a', { windingTemperatureK: null, thermalRunaway: true }),
    );
    expect(limit(of, 'winding_temperature')).toMatchObject({ passes: false, value: null });
  });

  it('a drive that does not yield passes a least push and fails a largest one', () => {
    const locks = run('a', { pushDownN: null, pushUpN: null });
    const push = (bound: ReturnType<typeof atLeast | typeof atMost>) =>
      limit(judged([criterion('push_force', 0, null, bound)], locks), 'push_force');
    expect(push(atLeast(50))).toMatchObject({ passes: true, value: null, reason: 'it does not yield' });
    expect(push(atMost(50))).toMatchObject({ passes: false, value: null, reason: 'it does not yield' });
  });

  it('the energy of a fall is nothing for a feature that stays, and counts with the leads as the drive has them', () => {
    const fallen = { ...run('a').nominal.powerCut, stays: false, impactEnergyJ: 2 };
    const shorted = { ...fallen, impactEnergyJ: 0.5 };
    const energy = (powerCut: CandidateRun['nominal']['powerCut']) =>
      limit(judged([criterion('fall_energy', 0, null, atMost(1))], run('a', { powerCut })), 'fall_energy')
        .value;
    expect(energy(run('a').nominal.powerCut)).toBe(0);
    expect(energy({ ...fallen, shorted })).toBe(2);
    expect(energy({ ...fallen, shorted, decides: 'shorted' })).toBe(0.5);
  });
});
