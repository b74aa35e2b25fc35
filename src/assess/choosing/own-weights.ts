import { type DrawnWorths, RankedDraw, tier } from './drawn-worths.js';

/** How often each candidate comes out where, with the user's own weights. */
export interface Standing {
  /** Share of draws in which it leads; candidates that lead together share the draw. */
  leadFraction: number;
  /** Share of draws at each rank, first rank first; equal candidates share their ranks. */
  rankFractions: Float64Array;
  /** Share of draws in which it beats each candidate, equal ones counting half; ½ against itself. */
  beatFractions: Float64Array;
  /** Share of draws in which every limit holds. */
  passFraction: number;
}

/**
 * How often each candidate leads, ranks and beats each other one over the draws, with fixed weights. A candidate
 * that breaks a hard limit in a draw ranks after those that pass in it.
 * @param weightScores one per criterion, sum 1
 * @returns one per candidate
 */
export function standings(drawn: DrawnWorths, weightScores: Float64Array): Standing[] {
  const count = drawn.worths.length;
  const ranked = new RankedDraw(drawn);
  const ranks = drawn.worths.map(() => new Float64Array(count));
  const beats = drawn.worths.map(() => new Float64Array(count));
  for (let draw = 0; draw < drawn.drawCount; draw++) {
    ranked.rank(draw, weightScores);
    for (let a = 0; a < count; a++) {
      addRanks(ranks[a]!, ranked.beforeCounts[a]!, ranked.equalCounts[a]!);
      for (let b = 0; b < count; b++) {
        const lead = a === b ? 0 : ranked.leadOver(a, b);
        beats[a]![b]! += lead > 0 ? 1 : lead === 0 ? 0.5 : 0;
      }
    }
  }
  return ranks.map((own, candidate) => {
    const rankFractions = own.map((times) => times / drawn.drawCount);
    return {
      leadFraction: rankFractions[0] ?? 0,
      rankFractions,
      beatFractions: beats[candidate]!.map((times) => times / drawn.drawCount),
      passFraction: drawn.tiers[candidate]!.filter((own) => own === tier.passes).length / drawn.drawCount,
    };
  });
}

/**
 * Adds one ranking to the times a candidate stood at each rank; equal candidates share the ranks they fill.
 * @param ranks times at each rank
 * @param beforeCount candidates that rank before it
 * @param equalCount candidates at its place, itself included
 */
export function addRanks(ranks: Float64Array, beforeCount: number, equalCount: number): void {
  for (let rank = beforeCount; rank < beforeCount + equalCount; rank++) ranks[rank]! += 1 / equalCount;
}
