import { describe, expect, it } from 'vitest';
import { type Drawn, type Known, knownFromDraws, knownNominally } from '../../src/app/records-known.js';
import { measurable } from '../../src/app/records-measured.js';
import { nominalPredictions, type Predictions } from '../../src/app/records-predicted.js';
import { misfit, suspects } from '../../src/app/records-suspects.js';
import { withValueAt } from '../../src/assess/value-at-path.js';
import { quantile } from '../../src/quantity/quantile.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import type { MeasuredQuantity, Measurement } from '../../src/study/choosing.js';
import type { Study } from '../../src/study/study.js';
import { measuredStudy, readings, studyFrom } from './measured-study.js';
import { smallStudy } from './small-study.js';

const servoIn = (of: Study) => of.candidates.find(({ id }) => id === of.baselineId)!;
const nominal = (of: Study): Predictions =>
  nominalPredictions(of, servoIn(of), simulateCandidate(of, servoIn(of), 'sketch').nominal);

/** What would be read on instruments that are good to 2 % of what is so. */
const readOf = (truth: Study, quantities: readonly MeasuredQuantity[]): Measurement[] =>
  quantities.map((quantity) => {
    const value = nominal(truth)[quantity].value!;
    return { quantity, value, halfWidth: Math.abs(value) * 0.02, note: '' };
  });

describe('the input that was wrong, where nothing was drawn', () => {
  const study = studyFrom(smallStudy());
  const servo = servoIn(study);
  const stated = nominal(study);
  const known = knownNominally(study, servo);
  const found = (measured: Measurement[]) => suspects(study, servo, known, stated, measured);
  const spreadOf = (path: string) => study.provenance.find((entry) => entry.path === path)!;
  /** The study with one input at a share of its spread. */
  const truthWith = (path: string, share: number): Study => {
    const { spread, value } = spreadOf(path);
    return withValueAt(study, path, quantile(spread, value as number, share))!;
  };

  it.each([
    ['pack.capacityC', 0.2, ['runtime', 'hold_current', 'loop_charge']],
    ['candidates.servo-now.typical.holdFrictionFraction', 0.8, ['runtime', 'hold_current']],
    ['candidates.servo-now.sheet.noLoadSpeed', 0.15, ['loop_charge', 'hold_current']],
  ] as const)('%s is found from what it does to the readings', (path, share, quantities) => {
    const [first] = found(readOf(truthWith(path, share), quantities));
    expect(first?.input.path).toBe(path);
    expect(first!.explainedFraction).toBeGreaterThan(0.9);
    const { spread, value } = spreadOf(path);
    expect(Math.abs(first!.value / quantile(spread, value as number, share) - 1)).toBeLessThan(0.1);
  });

  it('stays inside its 10–90 %, however far off the reading is', () => {
    const all = found([{ quantity: 'runtime', value: 600, halfWidth: 30, note: '' }]);
    expect(all.length).toBeGreaterThan(3);
    for (const { known: range, value } of all) {
      expect(value).toBeGreaterThanOrEqual(range.p10);
      expect(value).toBeLessThanOrEqual(range.p90);
    }
    expect(all[0]!.explainedFraction).toBeLessThan(0.9);
  });

  it('belongs to the drive that was measured, or to what all share', () => {
    const all = found(readOf(truthWith('pack.capacityC', 0.1), ['runtime']));
    expect(all.length).toBeGreaterThan(3);
    expect(all.filter(({ input }) => input.path.includes('worm-driver'))).toEqual([]);
  });

  it('is nobody when every reading is as predicted, and not guessed from what nobody predicts', () => {
    expect(found(readOf(study, ['runtime', 'hold_current']))).toEqual([]);
    const unknown: Measurement[] = [{ quantity: 'rest_current', value: 1, halfWidth: 0.1, note: '' }];
    expect(misfit({ rest_current: null }, unknown)).toBe(0);
  });

  it('everything that can be measured is predicted for a drive that plays the show', () => {
    expect(Object.keys(stated)).toEqual(measurable);
    for (const [quantity, { value }] of Object.entries(stated)) expect(value, quantity).toBeGreaterThan(0);
  });
});

describe('the input that was wrong, after calibration', { timeout: 120_000 }, () => {
  const study = studyFrom(measuredStudy({ 'measured.csv': () => readings }));
  const servo = servoIn(study);
  const draws = knownFromDraws(study, servo)!;
  const friction = 'candidates.tail-servo.typical.holdFrictionFraction';
  const quantities = ['runtime', 'hold_current', 'loop_charge'] as const;

  /** Median and 10–90 % by counting, as the definition has it. */
  function bandIn(column: Float64Array): Predictions['runtime'] {
    const sorted = column.slice().sort();
    const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!;
    return { value: at(0.5), band: { p10: at(0.1), p90: at(0.9) } };
  }
  const statedBy = (known: Drawn) =>
    Object.fromEntries(
      measurable.map((quantity) => [quantity, bandIn(known.modelled[quantity]!)]),
    ) as Predictions;

  it.each([
    ['pack.capacityC', 3060],
    [friction, 0.4],
  ])('%s is named when in truth it is %d and all else as written', (path, value) => {
    const truth = withValueAt(study, path, value)!;
    const [first] = suspects(study, servo, draws, statedBy(draws), readOf(truth, quantities));
    expect(first?.input.path).toBe(path);
  });

  it('is the stall current, and so the winding resistance, where the friction that helps to hold is known', () => {
    const histories = study.provenance.map((entry) => {
      if (entry.path === friction) return { ...entry, spread: null };
      return entry.field === 'stall_current'
        ? { ...entry, spread: { shape: 'normal', halfWidth: 0.4 } as const }
        : entry;
    });
    const sure = { ...study, provenance: histories };
    const known = knownFromDraws(sure, servo)!;
    const path = 'candidates.tail-servo.sheet.stallCurrentA';
    for (const currentA of [3, 3.8]) {
      const truth = withValueAt(sure, path, currentA)!;
      const [first] = suspects(sure, servo, known, statedBy(known), readOf(truth, quantities));
      expect(first?.input.path).toBe(path);
      expect(Math.sign(first!.value - 3.4)).toBe(Math.sign(currentA - 3.4));
    }
  });

  it('is looked for in what is known by now, not in what was believed before', () => {
    const rangeIn = (known: Known) => {
      const place = known.inputs.findIndex((input) => input.path === friction);
      return known.valueAt(place, 0.9) - known.valueAt(place, 0.1);
    };
    expect(rangeIn(draws)).toBeLessThan(0.6 * rangeIn(knownNominally(study, servo)));
    const far: Measurement[] = [{ quantity: 'hold_current', value: 1.6, halfWidth: 0.02, note: '' }];
    const suspect = suspects(study, servo, draws, statedBy(draws), far).find(
      ({ input }) => input.path === friction,
    )!;
    const place = draws.inputs.findIndex((input) => input.path === friction);
    expect(suspect.value).toBeLessThanOrEqual(draws.valueAt(place, 0.9));
    expect(suspect.known.median).toBe(draws.valueAt(place, 0.5));
  });
});
