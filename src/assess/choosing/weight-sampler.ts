import type { Sfc32 } from '../../simulate/sampling/sfc32.js';

/** Writes one set of random weights, each at least 0, sum 1. */
export type WeightSampler = (weightScores: Float64Array) => void;

/**
 * Weights uniform on all that add up to 1: exponential numbers over their sum. Uniform numbers over their sum
 * would crowd round equal weights.
 * @source lahdelma-salminen, section 3
 */
export function anyWeights(random: Sfc32): WeightSampler {
  return (weightScores) => {
    let sum = 0;
    for (let i = 0; i < weightScores.length; i++) {
      weightScores[i] = random.exponential();
      sum += weightScores[i]!;
    }
    for (let i = 0; i < weightScores.length; i++) weightScores[i]! /= sum;
  };
}

/**
 * Weights uniform on all that add up to 1 and keep the order of the user's own: what counts more there counts no
 * less here. Criteria with equal weights are left free among each other.
 *
 * The spacings of random points, sorted, are drawn as sums of exponential numbers: the i-th largest is
 * Σ_{j ≥ i} E_j / j over Σ E_j.
 * @param own the user's weights, one per criterion, at least 0
 * @source renyi, order statistics of exponential numbers (from memory)
 */
export function weightsInOrder(random: Sfc32, own: readonly number[]): WeightSampler {
  const places = Int32Array.from(own.keys()).sort((a, b) => own[b]! - own[a]! || a - b);
  const groups = equalGroups(places, own);
  return (weightScores) => {
    for (const group of groups) random.shuffle(group);
    let total = 0;
    let tail = 0;
    for (let rank = places.length; rank >= 1; rank--) {
      const number = random.exponential();
      total += number;
      tail += number / rank;
      weightScores[places[rank - 1]!] = tail;
    }
    for (let i = 0; i < weightScores.length; i++) weightScores[i]! /= total;
  };
}

/** Views of the runs of two and more criteria that carry the same weight. */
function equalGroups(places: Int32Array, own: readonly number[]): Int32Array[] {
  const groups: Int32Array[] = [];
  for (let from = 0; from < places.length; ) {
    let to = from + 1;
    while (to < places.length && own[places[to]!] === own[places[from]!]) to++;
    if (to - from > 1) groups.push(places.subarray(from, to));
    from = to;
  }
  return groups;
}
