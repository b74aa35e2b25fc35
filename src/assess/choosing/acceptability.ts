import { type DrawnWorths, RankedDraw } from './drawn-worths.js';
import { addRanks, standings } from './own-weights.js';
import type { WeightSampler } from './weight-sampler.js';

/** What a candidate would be chosen for, when nobody has settled the weights. */
export interface Acceptability {
  /** Share of draws and random weights at each rank, first rank first; equal candidates share their ranks. */
  rankFractions: Float64Array;
  /** Mean of the weights under which it leads, sum 1; null when none was met. */
  centralWeightScores: Float64Array | null;
  /** Share of draws in which it leads with its central weights; null without them. */
  confidenceFraction: number | null;
}

/**
 * Rank acceptability over draws and random weights, with central weights and confidence factors. (M23)
 * A candidate that breaks a hard limit in a draw ranks after those that pass in it.
 * @param sampler where the weights come from; called afresh for each ranking
 * @param weightsPerDrawCount rankings made of each draw
 * @returns one per candidate
 * @source lahdelma-salminen, sections 3 and 4
 */
export function acceptability(
  drawn: DrawnWorths,
  sampler: WeightSampler,
  weightsPerDrawCount: number,
): Acceptability[] {
  const { drawCount, criterionCount, worths } = drawn;
  const ranked = new RankedDraw(drawn);
  const weightScores = new Float64Array(criterionCount);
  const ranks = worths.map(() => new Float64Array(worths.length));
  const centres = worths.map(() => new Float64Array(criterionCount));
  for (let draw = 0; draw < drawCount; draw++) {
    for (let again = 0; again < weightsPerDrawCount; again++) {
      sampler(weightScores);
      ranked.rank(draw, weightScores);
      for (let c = 0; c < worths.length; c++) {
        const before = ranked.beforeCounts[c]!;
        const equal = ranked.equalCounts[c]!;
        addRanks(ranks[c]!, before, equal);
        if (before > 0) continue;
        for (let k = 0; k < criterionCount; k++) centres[c]![k]! += weightScores[k]! / equal;
      }
    }
  }
  const rankingCount = drawCount * weightsPerDrawCount;
  return ranks.map((own, candidate) => {
    const ledTimes = own[0]!;
    const centralWeightScores = ledTimes > 0 ? centres[candidate]!.map((sum) => sum / ledTimes) : null;
    return {
      rankFractions: own.map((times) => times / rankingCount),
      centralWeightScores,
      confidenceFraction:
        centralWeightScores === null ? null : standings(drawn, centralWeightScores)[candidate]!.leadFraction,
    };
  });
}
