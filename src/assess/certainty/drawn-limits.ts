import { outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { LimitOutcome } from '../assessment.js';
import { tier } from '../choosing/drawn-worths.js';
import { shareOf } from './bands.js';
import { type DrawnCandidate, drawnCriterion, isDrawn } from './drawn-figures.js';

/** The hard limits of one candidate, draw by draw. */
export interface DrawnLimits {
  /** One per draw: passes, not judged, fails. */
  tiers: Uint8Array;
  /** Share of draws in which each holds, in the order of the limits; null = not judged. */
  limitProbabilities: (number | null)[];
  /** Share in which all hold; null when one cannot be judged. */
  passProbability: number | null;
}

/** Ways of failing that the draws know together, as whether the candidate can do the job at all. */
const failureCodes = ['moves', 'holds', 'linkage', 'positions', 'cord', 'regulator'];

/**
 * Judges the limits of one candidate in each draw, by the same bounds as nominally. Voltage and fit are the same in
 * all draws. A limit whose figure is missing in all draws stays not judged; a figure that does not occur in a draw
 * fails its limit there.
 * @param limits as judged from nominal figures
 */
export function drawnLimits(limits: readonly LimitOutcome[], candidate: DrawnCandidate): DrawnLimits {
  const feasible = candidate.columns[outcomeIndex.feasible]!;
  const drawCount = feasible.length;
  const tiers = new Uint8Array(drawCount);
  for (let draw = 0; draw < drawCount; draw++) if (feasible[draw] !== 1) tiers[draw] = tier.fails;
  const limitProbabilities = limits.map((limit) => {
    const holds =
      failureCodes.includes(limit.criterion) && limit.passes !== null
        ? (draw: number) => feasible[draw] === 1
        : judgeOf(limit, candidate);
    if (holds === null) {
      for (let draw = 0; draw < drawCount; draw++)
        if (tiers[draw] === tier.passes) tiers[draw] = tier.notJudged;
      return null;
    }
    return shareOf(drawCount, (draw) => {
      if (holds(draw)) return true;
      tiers[draw] = tier.fails;
      return false;
    });
  });
  const judged = limitProbabilities.every((probability) => probability !== null);
  const passProbability = judged ? shareOf(drawCount, (draw) => tiers[draw] === tier.passes) : null;
  return { tiers, limitProbabilities, passProbability };
}

/** Whether a limit holds in a draw; null when it cannot be judged in any. */
function judgeOf(
  { criterion, direction, limit, passes }: LimitOutcome,
  candidate: DrawnCandidate,
): ((draw: number) => boolean) | null {
  if (!isDrawn(criterion)) return passes === null ? null : () => passes;
  const column = drawnCriterion(criterion, candidate);
  if (column.every((value) => Number.isNaN(value))) return passes === false ? () => false : null;
  return direction === 'at-least' ? (draw) => column[draw]! >= limit : (draw) => column[draw]! <= limit;
}
