import type { Sfc32 } from '../../simulate/sampling/sfc32.js';

const binCount = 10;
const permutationCount = 20;

/** What it would be worth to know one input before choosing. */
export interface WorthOfKnowing {
  /** Expected gain of score over choosing now; the estimate less what chance alone yields, at least 0. */
  gainScore: number;
  /** The estimate before that. */
  rawScore: number;
  /** What chance alone yields: mean over permutations. */
  chanceScore: number;
}

/**
 * Expected value of knowing one input exactly before choosing (of partial perfect information), in units of
 * utility. The draws are put into ten
 * groups of equal count by the input; choosing the best candidate in each group is compared with choosing one for all.
 *
 * Groups of noise have a best one too: what an input that tells nothing would seem to be worth is estimated from
 * permutations of what the input leaves unexplained, and taken off. 0 for an input that never varies or fewer draws
 * than groups.
 * @param input one value per draw
 * @param utilities per candidate one value per draw: score where all limits hold, else 0
 * @param random for the permutations
 * @source strong-oakley, value of partial information from a probabilistic sample (from memory)
 */
export function worthOfKnowing(
  input: Float64Array,
  utilities: readonly Float64Array[],
  random: Sfc32,
): WorthOfKnowing {
  const drawCount = input.length;
  const order = drawsInOrder(input);
  if (drawCount < binCount || utilities.length < 2 || input[order[0]!] === input[order[drawCount - 1]!]) {
    return { gainScore: 0, rawScore: 0, chanceScore: 0 };
  }
  const bins = new Int32Array(drawCount);
  for (let place = 0; place < drawCount; place++) {
    bins[order[place]!] = Math.floor((place * binCount) / drawCount);
  }
  const means = utilities.map(meanOf);
  const now = Math.max(...means);
  const rawScore = bestPerBin(bins, utilities) - now;
  const rest = utilities.map((own, candidate) => unexplained(bins, own, means[candidate]!));
  let chanceScore = 0;
  for (let again = 0; again < permutationCount; again++) {
    random.shuffle(bins);
    chanceScore += (bestPerBin(bins, rest) - now) / permutationCount;
  }
  return { gainScore: Math.max(0, rawScore - chanceScore), rawScore, chanceScore };
}

/** Indices of the draws by rising value, equal ones in their order. */
function drawsInOrder(values: Float64Array): Int32Array {
  const order = Int32Array.from(values.keys());
  return order.sort((a, b) => values[a]! - values[b]! || a - b);
}

/** Mean over the draws of what the best candidate of each bin yields on average there. */
function bestPerBin(bins: Int32Array, utilities: readonly Float64Array[]): number {
  const best = new Float64Array(binCount).fill(Number.NEGATIVE_INFINITY);
  for (const own of utilities) {
    const sums = binSums(bins, own);
    for (let bin = 0; bin < binCount; bin++) best[bin] = Math.max(best[bin]!, sums[bin]!);
  }
  return best.reduce((sum, value) => sum + value, 0) / bins.length;
}

/** The utility with each bin's mean replaced by the mean of all. */
function unexplained(bins: Int32Array, own: Float64Array, mean: number): Float64Array {
  const sums = binSums(bins, own);
  const counts = new Float64Array(binCount);
  for (let i = 0; i < bins.length; i++) counts[bins[i]!]!++;
  return own.map((value, i) => value - sums[bins[i]!]! / counts[bins[i]!]! + mean);
}

function binSums(bins: Int32Array, own: Float64Array): Float64Array {
  const sums = new Float64Array(binCount);
  for (let i = 0; i < bins.length; i++) sums[bins[i]!]! += own[i]!;
  return sums;
}

function meanOf(own: Float64Array): number {
  return own.reduce((sum, value) => sum + value, 0) / own.length;
}
