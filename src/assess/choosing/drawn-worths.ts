/** Scores closer than this are equal: rounding must not decide a rank. */
const equalWithin = 1e-12;

/** What every candidate is worth in every draw. */
export interface DrawnWorths {
  drawCount: number;
  criterionCount: number;
  /** Per candidate the worth 0…1, [draw × criterion], row after row. */
  worths: Float64Array[];
  /** Per candidate and draw, see `tier`. */
  tiers: Uint8Array[];
}

/** Lower tiers rank first, whatever the score. */
export const tier = { passes: 0, notJudged: 1, fails: 2 } as const;

/** Weights over their sum; all equal when none is above 0. */
export function normalisedWeights(own: readonly number[]): Float64Array {
  const sum = own.reduce((total, weight) => total + weight, 0);
  return Float64Array.from(own, (weight) => (sum > 0 ? weight / sum : 1 / own.length));
}

/** Ranks the candidates of one draw after another; candidates with equal scores share their ranks. */
export class RankedDraw {
  /** Of the draw last ranked, one per candidate. */
  readonly scores: Float64Array;
  /** How many candidates rank before this one. */
  readonly beforeCounts: Int32Array;
  /** How many share its place, itself included. */
  readonly equalCounts: Int32Array;

  constructor(private readonly drawn: DrawnWorths) {
    const candidateCount = drawn.worths.length;
    this.scores = new Float64Array(candidateCount);
    this.beforeCounts = new Int32Array(candidateCount);
    this.equalCounts = new Int32Array(candidateCount);
  }

  /**
   * Ranks one draw: by tier, then by weighted sum of worths.
   * @param draw index of the draw
   * @param weightScores one per criterion, sum 1
   */
  rank(draw: number, weightScores: Float64Array): void {
    const { scores, beforeCounts, equalCounts } = this;
    const { worths, criterionCount } = this.drawn;
    const first = draw * criterionCount;
    for (let c = 0; c < scores.length; c++) {
      const own = worths[c]!;
      let score = 0;
      for (let k = 0; k < criterionCount; k++) score += own[first + k]! * weightScores[k]!;
      scores[c] = score;
      beforeCounts[c] = 0;
      equalCounts[c] = 1;
    }
    for (let a = 0; a < scores.length; a++) {
      for (let b = a + 1; b < scores.length; b++) {
        const lead = this.leadBetween(a, b, draw);
        if (lead > 0) beforeCounts[b]!++;
        else if (lead < 0) beforeCounts[a]!++;
        else {
          equalCounts[a]!++;
          equalCounts[b]!++;
        }
      }
    }
  }

  /** Of the draw last ranked: above 0 when a ranks before b, below 0 when after it, 0 when equal. */
  leadBetween(a: number, b: number, draw: number): number {
    const { tiers } = this.drawn;
    const tierLead = tiers[b]![draw]! - tiers[a]![draw]!;
    if (tierLead !== 0) return tierLead;
    const lead = this.scores[a]! - this.scores[b]!;
    return Math.abs(lead) <= equalWithin ? 0 : lead;
  }
}
