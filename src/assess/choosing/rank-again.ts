import { normalisedWeights } from './drawn-worths.js';
import { standings } from './own-weights.js';
import { compareForRank, passesAll, scoreOf } from './rank-order.js';

/**
 * All that a ranking is made from, so that it can be made again with other weights and without some of the limits.
 * This file and what it imports also run in the page: they know of nothing but numbers.
 */
export interface Choice {
  criteria: { id: string; weightScore: number }[];
  /** Ids of the limits that may be dropped. */
  limits: string[];
  candidates: ChoiceCandidate[];
  /** 0 where nothing can be said of the draws. */
  drawCount: number;
}

/** One candidate as far as a ranking asks. */
export interface ChoiceCandidate {
  id: string;
  /** Nominal, one per criterion, 0…1. */
  worthScores: number[];
  /** Whether it passes the limits that cannot be dropped. */
  passes: boolean | null;
  /** Whether it passes each limit that can. */
  limitPasses: (boolean | null)[];
  /** Worth in each draw, [draw × criterion]. */
  drawnWorthScores: Float64Array;
  /** Per draw what the limits come to that cannot be dropped, see `tier`. */
  tiers: Uint8Array;
  /** The same of each limit that can. */
  limitTiers: Uint8Array[];
}

/** A candidate in its place. */
export interface RankedAgain {
  id: string;
  passes: boolean | null;
  /** Limits that can be dropped, are not, and that it fails. */
  failedLimits: string[];
  score: number;
  /** Share of draws in which it leads; null without draws. */
  leadFraction: number | null;
  /** Share of draws in which it passes every limit; null without draws. */
  passFraction: number | null;
}

/**
 * Ranks as the assessment does: nominal figures set the order, draws say how often each leads.
 * @param weightScores one per criterion; one above 0
 * @param isOn one per limit that may be dropped
 * @returns best first
 */
export function rankAgain(
  choice: Choice,
  weightScores: readonly number[],
  isOn: readonly boolean[],
): RankedAgain[] {
  const { candidates, drawCount, limits, criteria } = choice;
  const drawn = {
    drawCount,
    criterionCount: criteria.length,
    worths: candidates.map(({ drawnWorthScores }) => drawnWorthScores),
    tiers: candidates.map((candidate) => tiersWith(candidate, isOn)),
  };
  const found = drawCount > 0 ? standings(drawn, normalisedWeights(weightScores)) : null;
  return candidates
    .map((candidate, index): RankedAgain => {
      const { id, passes, limitPasses, worthScores } = candidate;
      const judged = limitPasses.filter((_, limit) => isOn[limit]).map((own) => ({ passes: own }));
      return {
        id,
        passes: passesAll([{ passes }, ...judged]),
        failedLimits: limits.filter((_, limit) => isOn[limit] && limitPasses[limit] === false),
        score: scoreOf(worthScores.map((worthScore, k) => ({ worthScore, weightScore: weightScores[k]! }))),
        leadFraction: found === null ? null : found[index]!.leadFraction,
        passFraction: found === null ? null : found[index]!.passFraction,
      };
    })
    .sort(compareForRank);
}

/** Per draw the worst of what always counts and of the limits that are on. */
function tiersWith({ tiers, limitTiers }: ChoiceCandidate, isOn: readonly boolean[]): Uint8Array {
  const counted = limitTiers.filter((_, limit) => isOn[limit]);
  return tiers.map((own, draw) => Math.max(own, ...counted.map((limit) => limit[draw]!)));
}
