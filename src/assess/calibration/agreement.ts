import { sigmasInHalfWidth } from '../../quantity/spread.js';
import { chiSquarePoint } from '../../simulate/sampling/chi-square.js';
import { type WeightedDraws, weightedDraws } from '../../simulate/sampling/resample.js';
import type { Measurement } from '../../study/choosing.js';
import type { Study } from '../../study/study.js';
import { modelErrorRatio } from './modelled.js';
import type { PriorDraws } from './prior-draws.js';

/** Chance that measured and modelled lie further apart although both are right. */
const contradictionShare = 0.99;

/** Fewer effective draws than this, after softening, carry no bands. */
const fewestForBands = 100;

/** How well the draws agree with what was measured. */
export interface Agreement extends WeightedDraws {
  /** Smallest sum of squared distances, in standard deviations, of any draw. */
  smallestChiSquare: number;
  /** What it stays under in 99 of 100 cases when nothing is wrong. */
  bound: number;
  contradicts: boolean;
  /** Whether enough draws agree to say how sure anything is. */
  bandsGiven: boolean;
}

/**
 * Weighs draws by their likelihood, errors of reading and of model together: σ² = σ_meas² + σ_model². (M21)
 * @param measured at least one, each modelled in the draws
 */
export function agreement(study: Study, prior: PriorDraws, measured: readonly Measurement[]): Agreement {
  const chiSquares = new Float64Array(prior.drawCount);
  for (const measurement of measured) {
    const column = prior.modelled[measurement.quantity]!;
    const sigma = sigmaOf(study, measurement);
    for (let draw = 0; draw < column.length; draw++) {
      const distance = column[draw]! - measurement.value;
      chiSquares[draw] = chiSquares[draw]! + (distance === 0 ? 0 : (distance / sigma) ** 2);
    }
  }
  let smallestChiSquare = Number.POSITIVE_INFINITY;
  for (const chiSquare of chiSquares) if (chiSquare < smallestChiSquare) smallestChiSquare = chiSquare;
  const weighted = weightedDraws(chiSquares.map((chiSquare) => -chiSquare / 2));
  const bound = chiSquarePoint(contradictionShare, measured.length);
  const contradicts = !(smallestChiSquare <= bound);
  const bandsGiven = !contradicts && weighted.effectiveCount >= fewestForBands;
  return { ...weighted, smallestChiSquare, bound, contradicts, bandsGiven };
}

/** Standard deviation of a reading about what the model says, in its own unit. */
export function sigmaOf(study: Study, { quantity, value, halfWidth }: Measurement): number {
  const zero = quantity === 'case_temperature' ? study.air.temperatureK : 0;
  return Math.hypot(halfWidth / sigmasInHalfWidth, modelErrorRatio(study, quantity) * (value - zero));
}
