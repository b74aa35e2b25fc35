import { describe, expect, it } from 'vitest';
import { calibrateWith } from '../../../src/assess/calibration/calibrate.js';
import { modelErrorRatio } from '../../../src/assess/calibration/modelled.js';
import { priorDraws } from '../../../src/assess/calibration/prior-draws.js';
import { bandOf } from '../../../src/assess/certainty/bands.js';
import type { Band } from '../../../src/assess/certainty.js';
import { inverseNormalShare } from '../../../src/quantity/normal.js';
import { type OutcomeName, outcomeIndex } from '../../../src/simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../../src/simulate/ensemble/run-ensemble.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';
import type { MeasuredQuantity, Measurement } from '../../../src/study/choosing.js';
import { demoStudy } from '../demo-study.js';

/**
 * Two hundred studies whose truth is drawn from the study's own spreads, each measured and calibrated.
 *
 * Reduced for time: 128 draws carry the bands of the other candidates instead of 2,048. The 32,768 draws of the
 * present drive that are weighed are all there, and the same for every study: they do not depend on the readings.
 */
const studyCount = 200;
const drawCount = 128;

/** One standard deviation. */
const meterError = 0.05;

const study = { ...demoStudy(), drawsCount: drawCount };
const baseline = study.candidates.find(({ id }) => id === study.baselineId)!;
const others = study.candidates.filter((candidate) => candidate !== baseline);

const truths = new EnsembleRun(study, study.candidates, studyCount, 77);
const truth = truths.emptyOutcomes();
truths.run(0, studyCount, truth);
const trueOutcome = (id: string, name: OutcomeName, index: number) =>
  truth[truths.candidateIds.indexOf(id)]![outcomeIndex[name]]![index]!;

const prior = priorDraws(study, baseline, ['runtime', 'hold_current']);
const priorBand = bandOf(prior.modelled.runtime!)!;

/**
 * What somebody reads off.
 * @param modelShare 1 = the model is off by as much as it is believed to be; 0 = the model is exact
 */
function reading(quantity: MeasuredQuantity, whole: number, random: Sfc32, modelShare: number): Measurement {
  const sigma = Math.hypot(meterError, modelShare * modelErrorRatio(study, quantity));
  const share = Math.min(1 - 1e-9, Math.max(1e-9, random.next()));
  const value = Math.max(0.05, 1 + sigma * inverseNormalShare(share)) * whole;
  return { quantity, value, halfWidth: 1.96 * meterError * value, note: '' };
}

const isInside = ({ p10, p90 }: Band, value: number) => value >= p10 && value <= p90;

/** Measures and calibrates every study; `withOthers` also computes the other candidates from what is shared. */
function recover(modelShare: number, withOthers: boolean) {
  const random = new Sfc32(5, 'errors of the meter and of the model');
  const inside = new Map(study.candidates.map(({ id }) => [id, 0]));
  const count = (id: string, band: Band, index: number) => {
    if (isInside(band, trueOutcome(id, 'runtimeS', index))) inside.set(id, inside.get(id)! + 1);
  };
  let [narrower, contradicted] = [0, 0];
  let fewestEffective = Number.POSITIVE_INFINITY;
  for (let index = 0; index < studyCount; index++) {
    const measured = [
      reading('runtime', trueOutcome(baseline.id, 'runtimeS', index), random, modelShare),
      reading('hold_current', trueOutcome(baseline.id, 'holdPackCurrentA', index), random, modelShare),
    ];
    const { columnOf, outcome } = calibrateWith(study, prior, measured);
    fewestEffective = Math.min(fewestEffective, outcome.effectiveSampleSize);
    if (outcome.contradiction !== null) contradicted++;
    const after = outcome.measured[0]!.after ?? priorBand;
    if (after.p90 - after.p10 < priorBand.p90 - priorBand.p10) narrower++;
    count(baseline.id, after, index);
    if (!withOthers) continue;
    const run = new EnsembleRun(study, others, drawCount, study.seed, columnOf);
    const outcomes = run.emptyOutcomes();
    run.run(0, drawCount, outcomes);
    others.forEach(({ id }, c) => {
      count(id, bandOf(outcomes[c]![outcomeIndex.runtimeS]!)!, index);
    });
  }
  const shares = [...inside].map(([id, times]) => ({ id, share: times / studyCount }));
  return { shares, narrower: narrower / studyCount, contradicted, fewestEffective };
}

describe('calibration on the present drive', { timeout: 180_000 }, () => {
  it('finds the truth again where the model is off as it is believed to be', () => {
    const { shares, narrower, contradicted, fewestEffective } = recover(1, true);
    // Four in five true runtimes belong inside a band of 80 %, for every candidate.
    const misses = shares.filter(({ share }) => share < 0.72 || share > 0.88);
    expect(misses).toEqual([]);
    expect(narrower).toBeGreaterThanOrEqual(0.9);
    expect(fewestEffective).toBeGreaterThanOrEqual(100);
    // One in a hundred readings lies this far off by chance alone.
    expect(contradicted).toBeLessThanOrEqual(6);
  });

  it('errs on the wide side where the model is better than believed', () => {
    const { shares, narrower, fewestEffective } = recover(0, false);
    const { share } = shares.find(({ id }) => id === baseline.id)!;
    expect(share).toBeGreaterThanOrEqual(0.8);
    expect(narrower).toBeGreaterThanOrEqual(0.9);
    expect(fewestEffective).toBeGreaterThanOrEqual(100);
  });
});
