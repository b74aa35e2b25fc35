import { describe, expect, it } from 'vitest';
import { sigmaOf } from '../../../src/assess/calibration/agreement.js';
import { calibrateWith } from '../../../src/assess/calibration/calibrate.js';
import { modelErrorRatio } from '../../../src/assess/calibration/modelled.js';
import { type PriorDraws, priorDraws } from '../../../src/assess/calibration/prior-draws.js';
import { EnsembleRun } from '../../../src/simulate/ensemble/run-ensemble.js';
import type { Measurement } from '../../../src/study/choosing.js';
import { demoStudy } from '../demo-study.js';

const study = { ...demoStudy(), drawsCount: 512 };
const baseline = study.candidates.find(({ id }) => id === study.baselineId)!;
const measuredAs = (quantity: Measurement['quantity'], value: number, halfWidth: number): Measurement => ({
  quantity,
  value,
  halfWidth,
  note: '',
});

/** One input x, even in 0…1, and a runtime of 1000·(1 + x): the posterior can be worked out by hand. */
function oneInput(drawCount: number): PriorDraws {
  const column = Float64Array.from({ length: drawCount }, (_, i) => (i + 0.5) / drawCount);
  return {
    drawCount,
    inputs: [
      {
        path: 'feature.massKg',
        field: 'feature.mass',
        owner: null,
        shared: true,
        nominal: 0.5,
        spread: { shape: 'uniform', low: 0, high: 1 },
        bounds: null,
        set() {},
        last: false,
      },
    ],
    columns: [column],
    modelled: { runtime: column.map((x) => 1000 * (1 + x)) },
  };
}

describe('draws that agree with what was measured', () => {
  it('have a spread that the errors of reading and of model set together', () => {
    // σ² = (30/1.96)² + (0.25·1500)²: the pack is known by its label only.
    expect(sigmaOf(study, measuredAs('runtime', 1500, 30))).toBeCloseTo(Math.hypot(30 / 1.96, 375), 9);
    expect(modelErrorRatio(study, 'hold_current')).toBe(0.15);
    const known = { ...study, pack: { ...study.pack, cellResistanceOhm: 0.03 } };
    expect(modelErrorRatio(known, 'runtime')).toBe(0.1);
  });

  it('count the rise above the air for a temperature', () => {
    const warm = measuredAs('case_temperature', study.air.temperatureK + 20, 0);
    expect(sigmaOf(study, warm)).toBeCloseTo(2, 9);
  });

  it('lie about the reading as the likelihood says', () => {
    const known = { ...study, pack: { ...study.pack, cellResistanceOhm: 0.03 }, drawsCount: 4096 };
    const { outcome } = calibrateWith(known, oneInput(32768), [measuredAs('runtime', 1500, 0)]);
    const [{ before, after }] = outcome.measured as [(typeof outcome.measured)[0]];
    expect([before.p10, before.p90].map(Math.round)).toEqual([1100, 1900]);
    // Normal of σ 150 about 1500, cut at 1000 and 2000.
    expect(after!.median).toBeCloseTo(1500, -1);
    expect(after!.p90 - after!.p10).toBeGreaterThan(2 * 1.2816 * 150 * 0.97);
    expect(after!.p90 - after!.p10).toBeLessThan(2 * 1.2816 * 150 * 1.01);
    expect(outcome).toMatchObject({ temper: 1, contradiction: null, bandsGiven: true });
  });

  it('are softened where too few of them agree, and the count says what is left', () => {
    const few = calibrateWith(study, oneInput(400), [measuredAs('runtime', 1030, 0)]);
    const many = calibrateWith(study, oneInput(32768), [measuredAs('runtime', 1030, 0)]);
    expect(many.outcome.temper).toBe(1);
    expect(few.outcome.temper).toBeLessThan(1);
    expect(few.outcome.effectiveSampleSize).toBeCloseTo(200, 3);
  });

  it('are left as they were where measured and computed cannot both be right', () => {
    const { outcome, columnOf } = calibrateWith(study, oneInput(32768), [measuredAs('runtime', 9000, 60)]);
    expect(outcome.contradiction).not.toBeNull();
    expect(outcome.contradiction!.smallestChiSquare).toBeGreaterThan(outcome.contradiction!.bound);
    expect(outcome).toMatchObject({ bandsGiven: false, moved: [] });
    expect(outcome.measured[0]!.after).toBeNull();
    const planned = Float64Array.of(7);
    expect(columnOf({ path: 'feature.massKg' } as never, () => planned)).toBe(planned);
  });
});

describe('what calibration carries over', () => {
  const prior = priorDraws(study, baseline, ['runtime'], { drawCount: 4096 });
  const { columnOf } = calibrateWith(study, prior, [measuredAs('runtime', 4200, 180)]);
  const plain = new EnsembleRun(study, study.candidates, study.drawsCount);
  const calibrated = new EnsembleRun(study, study.candidates, study.drawsCount, study.seed, columnOf);
  const moved = plain.inputs.filter((_, index) =>
    plain.columns[index]!.some((value, draw) => value !== calibrated.columns[index]![draw]),
  );

  it('is what all candidates share, and the figures of the drive that was measured', () => {
    expect(moved.length).toBeGreaterThan(10);
    expect(moved.every(({ shared, owner }) => shared || owner === baseline.id)).toBe(true);
    expect(moved.some(({ path }) => path === 'pack.capacityC')).toBe(true);
  });

  it('are values that were drawn, joined as they were drawn', () => {
    const place = (path: string) => prior.inputs.findIndex((input) => input.path === path);
    const at = (path: string) =>
      calibrated.columns[calibrated.inputs.findIndex((input) => input.path === path)]!;
    const pairs = new Map(
      [...prior.columns[place('pack.capacityC')]!].map((value, draw) => [
        value,
        prior.columns[place('feature.massKg')]![draw]!,
      ]),
    );
    const masses = at('feature.massKg');
    expect(at('pack.capacityC').every((value, draw) => pairs.get(value) === masses[draw])).toBe(true);
  });
});
