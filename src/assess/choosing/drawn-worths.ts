/** Scores closer than this are equal: rounding must not decide a rank. */
export const equalWithin = 1e-12;

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

/** More than scores can differ by: what a worse tier costs in the order. */
const tierStep = 4;

/** Ranks the candidates of one draw after another; candidates with equal scores share their ranks. */
export class RankedDraw {
  /** How many candidates rank before this one. */
  readonly beforeCounts: Int32Array;
  /** How many share its place, itself included. */
  readonly equalCounts: Int32Array;
  /** Score less what the tier costs. */
  private readonly places: Float64Array;

  constructor(private readonly drawn: DrawnWorths) {
    const candidateCount = drawn.worths.length;
    this.beforeCounts = new Int32Array(candidateCount);
    this.equalCounts = new Int32Array(candidateCount);
    this.places = new Float64Array(candidateCount);
  }

  /**
   * Ranks one draw: by tier, then by weighted sum of worths.
   * @param draw index of the draw
   * @param weightScores one per criterion, sum 1
   */
  rank(draw: number, weightScores: Float64Array): void {
    const { places, beforeCounts, equalCounts } = this;
    const { worths, tiers, criterionCount } = this.drawn;
    const first = draw * criterionCount;
    for (let c = 0; c < places.length; c++) {
      const own = worths[c]!;
      let score = 0;
      for (let k = 0; k < criterionCount; k++) score += own[first + k]! * weightScores[k]!;
      places[c] = score - tierStep * tiers[c]![draw]!;
      beforeCounts[c] = 0;
      equalCounts[c] = 1;
    }
    for (let a = 0; a < places.length; a++) {
      for (let b = a + 1; b < places.length; b++) {
        const lead = places[a]! - places[b]!;
        if (lead > equalWithin) beforeCounts[b]!++;
        else if (lead < -equalWithin) beforeCounts[a]!++;
        else {
          equalCounts[a]!++;
          equalCounts[b]!++;
        }
      }
    }
  }

  /** How far a lies before b in the draw last ranked: negative when after it, 0 when they share a place. */
  leadOver(a: number, b: number): number {
    const lead = this.places[a]! - this.places[b]!;
    return Math.abs(lead) <= equalWithin ? 0 : lead;
  }
}
