import type { ColumnSource } from '../../simulate/ensemble/run-ensemble.js';
import { resample } from '../../simulate/sampling/resample.js';
import { Sfc32 } from '../../simulate/sampling/sfc32.js';
import type { Measurement } from '../../study/choosing.js';
import type { Study } from '../../study/study.js';
import type { CalibrationOutcome } from '../certainty.js';
import type { Threads } from '../threads.js';
import { type Agreement, agreement } from './agreement.js';
import { movedInputs } from './moved-inputs.js';
import { type PriorDraws, priorDraws } from './prior-draws.js';
import { readingsBeforeAndAfter } from './readings.js';

/** Draws that agree with what was measured, and what the measurements did. */
export interface Calibrated {
  /** Draws of what all candidates share and of the drive of today; those of the others are as planned. */
  columnOf: ColumnSource;
  outcome: CalibrationOutcome;
}

/**
 * Makes the draws of a study agree with what was measured on the drive of today. What the other candidates share
 * with it carries over to them; figures of their own do not. (M21)
 *
 * Where measured and modelled contradict each other, or agree in too few draws, the draws stay as they were and the
 * outcome says that no bands are given.
 * @returns null without a measurement, or without a drive of today
 */
export function calibrate(study: Study, threads?: Threads): Calibrated | null {
  const baseline = study.candidates.find(({ id }) => id === study.baselineId);
  const { measured } = study;
  if (baseline === undefined || measured.length === 0) return null;
  const quantities = measured.map(({ quantity }) => quantity);
  return calibrateWith(study, priorDraws(study, baseline, quantities, { threads }), measured);
}

/** The same with draws that are there already. */
export function calibrateWith(study: Study, prior: PriorDraws, measured: readonly Measurement[]): Calibrated {
  const agreed = agreement(study, prior, measured);
  const taken = agreed.bandsGiven
    ? resample(agreed.weightFractions, study.drawsCount, new Sfc32(study.seed, 'draws that agree'))
    : null;
  const places = new Map(prior.inputs.map(({ path }, index) => [path, index]));
  return {
    columnOf: ({ path }, planned) => {
      const place = places.get(path);
      return taken === null || place === undefined ? planned() : picked(prior.columns[place]!, taken);
    },
    outcome: outcomeOf(study, prior, measured, agreed, taken),
  };
}

/** The values of a column in the draws that were taken. */
const picked = (column: Float64Array, taken: Int32Array): Float64Array =>
  Float64Array.from(taken, (draw) => column[draw]!);

function outcomeOf(
  study: Study,
  prior: PriorDraws,
  measured: readonly Measurement[],
  agreed: Agreement,
  taken: Int32Array | null,
): CalibrationOutcome {
  const { bandsGiven, effectiveCount, temperingRatio, contradicts } = agreed;
  return {
    measured: readingsBeforeAndAfter(prior, measured, taken),
    effectiveSampleSize: effectiveCount,
    comparedDrawCount: prior.drawCount,
    temper: temperingRatio,
    contradiction: contradicts ? { smallestChiSquare: agreed.smallestChiSquare, bound: agreed.bound } : null,
    bandsGiven,
    moved: taken === null ? [] : movedInputs(study, prior, taken),
  };
}
