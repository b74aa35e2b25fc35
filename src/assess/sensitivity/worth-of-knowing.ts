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
  /** Share of draws in whose group another candidate is the best than the one that is chosen; 0 where nothing is gained. */
  changedProbability: number;
}

/**
 * Expected value of knowing an input exactly before choosing (of partial perfect information), for each of several
 * inputs, in units of utility. The draws are put into ten groups of equal count by the input; choosing the best
 * candidate in each group is compared with choosing one for all.
 *
 * Groups of noise have a best one too: what an input that tells nothing would seem to be worth is estimated from
 * permutations of what the input leaves unexplained, and taken off. 0 for an input that never varies, and with fewer
 * draws than groups.
 * @param inputs per input one value per draw
 * @param utilities per candidate one value per draw: score where all limits hold, else 0
 * @param random for the permutations, the same ones for every input
 * @param chosen place of the candidate that is chosen as things stand; the best over all draws when left out
 * @returns one per input
 * @source strong-oakley, value of partial information from a probabilistic sample (from memory)
 */
export function worthsOfKnowing(
  inputs: readonly Float64Array[],
  utilities: readonly Float64Array[],
  random: Sfc32,
  chosen: number | null = null,
): WorthOfKnowing[] {
  const drawCount = utilities[0]?.length ?? 0;
  const permutations = Array.from({ length: permutationCount }, () => {
    const order = Int32Array.from({ length: drawCount }, (_, draw) => draw);
    random.shuffle(order);
    return order;
  });
  const groups = new Groups(drawCount, utilities.length);
  return inputs.map((input) => worthOfKnowing(input, utilities, permutations, groups, chosen));
}

function worthOfKnowing(
  input: Float64Array,
  utilities: readonly Float64Array[],
  permutations: readonly Int32Array[],
  groups: Groups,
  chosen: number | null,
): WorthOfKnowing {
  const order = drawsInOrder(input);
  const varies = input[order[0]!] !== input[order[order.length - 1]!];
  if (input.length < binCount || utilities.length < 2 || !varies) {
    return { ...nothing, rawScore: 0, chanceScore: 0 };
  }
  const rawScore = groups.gainOf(order, utilities);
  // One candidate is the best in every group: nothing to gain, whatever chance would yield.
  if (!(rawScore > 0)) return { ...nothing, rawScore, chanceScore: 0 };
  const rest = utilities.map((own) => groups.unexplained(order, own));
  let chanceScore = 0;
  for (const permutation of permutations) chanceScore += groups.gainOf(permutation, rest) / permutationCount;
  if (rawScore <= chanceScore) return { ...nothing, rawScore, chanceScore };
  const changedProbability = groups.changedProbability(order, utilities, chosen);
  return { gainScore: rawScore - chanceScore, rawScore, chanceScore, changedProbability };
}

const nothing = { gainScore: 0, changedProbability: 0 };

/** Indices of the draws by rising value, equal ones in their order. */
function drawsInOrder(values: Float64Array): Int32Array {
  // Plain numbers sort many times faster than indices do by comparison; each draw then looks up its place.
  const sorted = values.slice().sort();
  const taken = new Int32Array(values.length);
  const order = new Int32Array(values.length);
  for (let draw = 0; draw < values.length; draw++) {
    const first = firstNotBelow(sorted, values[draw]!);
    order[first + taken[first]!++] = draw;
  }
  return order;
}

/** @param sorted rising */
function firstNotBelow(sorted: Float64Array, value: number): number {
  let from = 0;
  let to = sorted.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (sorted[middle]! < value) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** Ten groups of as equal counts as can be, of draws in some order. */
class Groups {
  /** Where each group begins in the order, and the count of all at the end. */
  private readonly starts: Int32Array;
  private readonly bests = new Float64Array(binCount);

  constructor(
    private readonly drawCount: number,
    private readonly candidateCount: number,
  ) {
    this.starts = Int32Array.from({ length: binCount + 1 }, (_, bin) =>
      Math.ceil((bin * drawCount) / binCount),
    );
  }

  /** What choosing group by group yields over choosing once, on average over the draws. */
  gainOf(order: Int32Array, utilities: readonly Float64Array[]): number {
    const { bests, candidateCount, drawCount } = this;
    bests.fill(Number.NEGATIVE_INFINITY);
    let bestOfAll = Number.NEGATIVE_INFINITY;
    for (let c = 0; c < candidateCount; c++) {
      let total = 0;
      for (let bin = 0; bin < binCount; bin++) {
        const sum = this.sumOf(bin, order, utilities[c]!);
        total += sum;
        if (sum > bests[bin]!) bests[bin] = sum;
      }
      if (total > bestOfAll) bestOfAll = total;
    }
    let apart = 0;
    for (let bin = 0; bin < binCount; bin++) apart += bests[bin]!;
    return (apart - bestOfAll) / drawCount;
  }

  /** Share of the draws in groups whose best candidate is not the chosen one, or else the best of all. */
  changedProbability(order: Int32Array, utilities: readonly Float64Array[], chosen: number | null): number {
    const sums = utilities.map((own) =>
      Array.from({ length: binCount }, (_, bin) => this.sumOf(bin, order, own)),
    );
    const bestBy = (figure: (own: number[]) => number) =>
      sums.reduce((best, own, c) => (figure(own) > figure(sums[best]!) ? c : best), 0);
    const now = chosen ?? bestBy((own) => own.reduce((total, sum) => total + sum, 0));
    let count = 0;
    for (let bin = 0; bin < binCount; bin++) {
      const isOther = sums[bestBy((own) => own[bin]!)]![bin]! > sums[now]![bin]!;
      if (isOther) count += this.starts[bin + 1]! - this.starts[bin]!;
    }
    return count / this.drawCount;
  }

  /** The utility with each group's mean replaced by the mean of all. */
  unexplained(order: Int32Array, own: Float64Array): Float64Array {
    const rest = new Float64Array(own.length);
    let mean = 0;
    for (let i = 0; i < own.length; i++) mean += own[i]! / own.length;
    for (let bin = 0; bin < binCount; bin++) {
      const [from, to] = [this.starts[bin]!, this.starts[bin + 1]!];
      const shift = mean - this.sumOf(bin, order, own) / (to - from);
      for (let place = from; place < to; place++) rest[order[place]!] = own[order[place]!]! + shift;
    }
    return rest;
  }

  private sumOf(bin: number, order: Int32Array, own: Float64Array): number {
    const to = this.starts[bin + 1]!;
    let sum = 0;
    for (let place = this.starts[bin]!; place < to; place++) sum += own[order[place]!]!;
    return sum;
  }
}
