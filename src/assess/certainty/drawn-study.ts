import type { Ensemble } from '../../simulate/ensemble/ensemble.js';
import type { Criterion } from '../../study/choosing.js';
import type { LimitOutcome } from '../assessment.js';
import { type DrawnWorths, normalisedWeights, tier } from '../choosing/drawn-worths.js';
import type { Judged } from '../criterion-values.js';
import { weightedCriteria, worthOf } from '../scores.js';
import { type DrawnCandidate, drawnCriterion } from './drawn-figures.js';
import { type DrawnLimits, drawnLimits } from './drawn-limits.js';

/** A candidate as it was judged from nominal figures. */
export interface NominalJudgement {
  judged: Judged;
  limits: readonly LimitOutcome[];
}

/** All draws of a study, judged: limits and worths of every candidate in every draw, in the study's order. */
export interface DrawnStudy {
  drawCount: number;
  candidateIds: string[];
  criteria: Criterion[];
  /** The user's own, sum 1. */
  ownWeights: Float64Array;
  worths: DrawnWorths;
  limits: DrawnLimits[];
  /** Per candidate and draw the score with the user's own weights, 0…1, limits left out. */
  scores: Float64Array[];
}

/**
 * Judges every draw by the criteria of the study.
 * @param nominal one per candidate of the draws, in their order
 */
export function drawnStudy(
  criteria: readonly Criterion[],
  nominal: readonly NominalJudgement[],
  { candidateIds, drawCount, outcomes }: Pick<Ensemble, 'candidateIds' | 'drawCount' | 'outcomes'>,
): DrawnStudy {
  const weighted = weightedCriteria([...criteria]);
  const drawn = nominal.map(({ judged }, index) => ({ judged, columns: outcomes[index]! }));
  const limits = drawn.map((candidate, index) => drawnLimits(nominal[index]!.limits, candidate));
  const worths = drawn.map((candidate) => worthsOf(candidate, weighted, drawCount));
  const ownWeights = normalisedWeights(weighted.map(({ weightScore }) => weightScore));
  return {
    drawCount,
    candidateIds,
    criteria: weighted,
    ownWeights,
    worths: { drawCount, criterionCount: weighted.length, worths, tiers: limits.map(({ tiers }) => tiers) },
    limits,
    scores: worths.map((own) => scoresOf(own, ownWeights, drawCount)),
  };
}

/** Worth of one candidate, [draw × criterion]; a figure that is missing or does not occur is worth nothing. */
function worthsOf(
  candidate: DrawnCandidate,
  criteria: readonly Criterion[],
  drawCount: number,
): Float64Array {
  const worths = new Float64Array(drawCount * criteria.length);
  criteria.forEach(({ id, worthless, worthFull }, place) => {
    if (worthless === null || worthFull === null) return;
    const column = drawnCriterion(id, candidate);
    for (let draw = 0; draw < drawCount; draw++) {
      const value = column[draw]!;
      if (!Number.isNaN(value)) worths[draw * criteria.length + place] = worthOf(value, worthless, worthFull);
    }
  });
  return worths;
}

function scoresOf(worths: Float64Array, weights: Float64Array, drawCount: number): Float64Array {
  const scores = new Float64Array(drawCount);
  for (let draw = 0; draw < drawCount; draw++) {
    let score = 0;
    for (let k = 0; k < weights.length; k++) score += worths[draw * weights.length + k]! * weights[k]!;
    scores[draw] = score;
  }
  return scores;
}

/**
 * Utility of each candidate per draw: its score where all limits hold, else 0. Where no candidate can be judged in
 * full, what could be judged counts.
 */
export function utilitiesOf({ scores, limits, drawCount }: DrawnStudy): Float64Array[] {
  const worst = limits.some(({ passProbability }) => passProbability !== null) ? tier.passes : tier.notJudged;
  return scores.map((own, candidate) => {
    const { tiers } = limits[candidate]!;
    const utilities = new Float64Array(drawCount);
    for (let draw = 0; draw < drawCount; draw++) if (tiers[draw]! <= worst) utilities[draw] = own[draw]!;
    return utilities;
  });
}
