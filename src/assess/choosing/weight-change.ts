import { equalWithin } from './drawn-worths.js';

/** Doublings and halvings of the multiplier: enough to find which weights become 0. */
const searchSteps = 200;

/** The exact solution lies this close to what the search found, or the search is believed. */
const closeTo = 1e-6;

/** The least that has to happen to the weights before another candidate leads. */
export interface WeightChange {
  /** Place among the candidates of the one that draws level. */
  challengerIndex: number;
  /** Weights at which it does, sum 1. */
  weightScores: Float64Array;
  /** Length of the change, as a straight line between the two sets of weights; 0 when they are level already. */
  changeScore: number;
}

/**
 * The smallest change of weights, weights staying at or above 0 with sum 1, that changes who leads; null when no
 * weights do. Exact for scores that are weighted sums: of all candidates, the first to draw level along the
 * shortest way also leads there, for a third one in front would have drawn level on a shorter way.
 *
 * Candidates of a worse tier never lead, whatever the weights.
 * @param worths per candidate one worth per criterion
 * @param tiers one per candidate, lower ranks first
 * @param leaderIndex the candidate that leads now
 * @param own weights now, sum 1
 */
export function smallestWeightChange(
  worths: readonly Float64Array[],
  tiers: ArrayLike<number>,
  leaderIndex: number,
  own: Float64Array,
): WeightChange | null {
  let smallest: WeightChange | null = null;
  for (let challenger = 0; challenger < worths.length; challenger++) {
    if (challenger === leaderIndex || tiers[challenger] !== tiers[leaderIndex]) continue;
    const gains = worths[challenger]!.map((worth, k) => worth - worths[leaderIndex]![k]!);
    const weightScores = nearestLevelWeights(own, gains);
    if (weightScores === null) continue;
    const changeScore = Math.hypot(...weightScores.map((weight, k) => weight - own[k]!));
    if (smallest === null || changeScore < smallest.changeScore)
      smallest = { challengerIndex: challenger, weightScores, changeScore };
  }
  return smallest;
}

/**
 * The weights nearest to the given ones at which a weighted sum of gains is no longer negative; null when it never
 * rises above 0. They are max(0, w + λ + μ·gain) with λ for the sum 1 and the smallest μ that reaches 0: found by
 * halving, then solved exactly for the weights that stay above 0.
 * @param own weights now, sum 1
 * @param gains one per criterion, of the challenger over the leader
 */
export function nearestLevelWeights(own: Float64Array, gains: Float64Array): Float64Array | null {
  if (dot(own, gains) >= -equalWithin) return Float64Array.from(own);
  if (!(Math.max(...gains) > equalWithin)) return null;
  const largest = Math.max(...gains.map(Math.abs));
  return levelWeights(
    own,
    gains.map((gain) => gain / largest),
  );
}

/** The same with gains of which the largest has size 1. */
function levelWeights(own: Float64Array, gains: Float64Array): Float64Array {
  const pushed = (pull: number) => ontoSimplex(own.map((weight, k) => weight + pull * gains[k]!));
  let low = 0;
  let high = 1;
  for (let step = 0; step < searchSteps && dot(pushed(high), gains) < 0; step++) high *= 2;
  for (let step = 0; step < searchSteps && high > low; step++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (dot(pushed(middle), gains) < 0) low = middle;
    else high = middle;
  }
  return levelOn(own, gains, pushed(high));
}

/**
 * The nearest level weights on the criteria that keep a weight: w + λ + μ·gain with λ and μ from the two equations
 * Σ = 1 and Σ·gain = 0.
 * @param near weights found by searching
 */
function levelOn(own: Float64Array, gains: Float64Array, near: Float64Array): Float64Array {
  let [count, lack, gainSum, gainSquares, behind] = [0, 1, 0, 0, 0];
  for (let k = 0; k < own.length; k++) {
    if (near[k] === 0) continue;
    count++;
    lack -= own[k]!;
    gainSum += gains[k]!;
    gainSquares += gains[k]! * gains[k]!;
    behind += own[k]! * gains[k]!;
  }
  const determinant = count * gainSquares - gainSum * gainSum;
  // All gains alike: only weights that are level already reach this, and the search has them.
  if (!(determinant > 1e-14 * count * gainSquares)) return near;
  const offset = (lack * gainSquares + behind * gainSum) / determinant;
  const pull = -(count * behind + lack * gainSum) / determinant;
  const exact = own.map((weight, k) => (near[k] === 0 ? 0 : weight + offset + pull * gains[k]!));
  const agrees = exact.every((weight, k) => weight >= 0 && Math.abs(weight - near[k]!) < closeTo);
  return agrees ? exact : near;
}

/** The nearest point with all parts at least 0 and sum 1. */
function ontoSimplex(point: Float64Array): Float64Array {
  const sorted = Float64Array.from(point).sort();
  let sum = 0;
  let offset = 0;
  for (let taken = 1; taken <= sorted.length; taken++) {
    const next = sorted[sorted.length - taken]!;
    sum += next;
    if (next + (1 - sum) / taken <= 0) break;
    offset = (1 - sum) / taken;
  }
  return point.map((part) => Math.max(0, part + offset));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
