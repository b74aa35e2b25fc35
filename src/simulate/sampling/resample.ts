import type { Sfc32 } from './sfc32.js';

/** Draws worth as much as so many independent ones are aimed at. */
const aimedEffectiveCount = 200;

/** Halvings of the exponent: to nine digits. */
const temperingHalvings = 30;

/** Draws weighted by how well they agree with what was measured. */
export interface WeightedDraws {
  /** One per draw, sum 1; all 0 when no draw is possible. */
  weightFractions: Float64Array;
  /** Exponent on the likelihood: 1 = taken as it is, less = softened so that enough draws count. */
  temperingRatio: number;
  /** How many independent draws the weighted ones are worth, softening included. */
  effectiveCount: number;
  /** The same before softening. */
  plainEffectiveCount: number;
}

/**
 * How many independent draws weighted ones are worth: (Σw)²/Σw². 0 when all weights are 0.
 * @param weights at least 0, any scale
 * @source kong, effective sample size (from memory)
 */
export function effectiveDrawCount(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < weights.length; i++) {
    sum += weights[i]!;
    squares += weights[i]! * weights[i]!;
  }
  return squares > 0 ? (sum * sum) / squares : 0;
}

/**
 * Weights from log likelihoods, softened by the largest exponent up to 1 that leaves enough effective draws. Where
 * even equal weights leave too few, all possible draws weigh the same and the count says so.
 * @param logLikelihoods one per draw, any constant added; −Infinity or NaN for a draw that cannot be
 * @param aimedCount effective draws wanted
 */
export function weightedDraws(logLikelihoods: Float64Array, aimedCount = aimedEffectiveCount): WeightedDraws {
  const weightFractions = new Float64Array(logLikelihoods.length);
  const countAt = (exponent: number) => {
    raiseWeights(logLikelihoods, exponent, weightFractions);
    return effectiveDrawCount(weightFractions);
  };
  const plainEffectiveCount = countAt(1);
  let temperingRatio = 1;
  let effectiveCount = plainEffectiveCount;
  if (plainEffectiveCount < aimedCount) {
    let soft = 0;
    let sharp = 1;
    for (let halving = 0; halving < temperingHalvings; halving++) {
      const middle = (soft + sharp) / 2;
      if (countAt(middle) >= aimedCount) soft = middle;
      else sharp = middle;
    }
    temperingRatio = soft;
    effectiveCount = countAt(soft);
  }
  return { weightFractions, temperingRatio, effectiveCount, plainEffectiveCount };
}

/** Likelihoods raised to an exponent, scaled to sum 1. */
function raiseWeights(logLikelihoods: Float64Array, exponent: number, out: Float64Array): void {
  let largest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < out.length; i++) {
    if (logLikelihoods[i]! > largest) largest = logLikelihoods[i]!;
  }
  let sum = 0;
  for (let i = 0; i < out.length; i++) {
    const below = logLikelihoods[i]! - largest;
    out[i] = below > Number.NEGATIVE_INFINITY ? Math.exp(exponent * below) : 0;
    sum += out[i]!;
  }
  if (sum > 0) for (let i = 0; i < out.length; i++) out[i]! /= sum;
}

/**
 * Which draws to take, and how often, so that each stands for the same weight: equal steps through the summed
 * weights from one random start. A draw of weight w is taken ⌊n·w⌋ or ⌈n·w⌉ times.
 *
 * The steps go through the draws in random order. In their own order they would keep time with the pattern of a
 * low-discrepancy sequence and take the same part of its range again and again.
 * @param weights at least 0, any scale, not all 0
 * @param count how many to take
 * @returns indices into the weights, one per draw taken, in random order
 * @source kitagawa, systematic resampling (from memory)
 */
export function resample(weights: Float64Array, count: number, random: Sfc32): Int32Array {
  const order = possibleDraws(weights);
  random.shuffle(order);
  let total = 0;
  for (let i = 0; i < order.length; i++) total += weights[order[i]!]!;
  const taken = new Int32Array(count);
  const start = random.next();
  let place = 0;
  let sum = weights[order[0]!]!;
  for (let i = 0; i < count; i++) {
    const mark = ((i + start) / count) * total;
    while (sum <= mark && place < order.length - 1) sum += weights[order[++place]!]!;
    taken[i] = order[place]!;
  }
  random.shuffle(taken);
  return taken;
}

/** Indices of the draws that have a weight. */
function possibleDraws(weights: Float64Array): Int32Array {
  const possible = Int32Array.from(weights.keys()).filter((index) => weights[index]! > 0);
  if (possible.length === 0) throw new Error('no draw has a weight');
  return possible;
}
