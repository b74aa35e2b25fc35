import { Sfc32 } from './sfc32.js';

/** How many dimensions the sequence has. */
export const sobolDimensionCount = 16;

const bitCount = 32;

/**
 * Per dimension from the second on: degree of the primitive polynomial, its inner coefficients as bits, and the
 * first direction numbers.
 *
 * @source joe-kuo, direction numbers D(6), dimensions 2 to 16 (from memory)
 */
const polynomials: readonly (readonly [degree: number, inner: number, first: readonly number[]])[] = [
  [1, 0, [1]],
  [2, 1, [1, 3]],
  [3, 1, [1, 3, 1]],
  [3, 2, [1, 1, 1]],
  [4, 1, [1, 1, 3, 3]],
  [4, 4, [1, 3, 5, 13]],
  [5, 2, [1, 1, 5, 5, 17]],
  [5, 4, [1, 1, 5, 5, 5]],
  [5, 7, [1, 1, 7, 11, 19]],
  [5, 11, [1, 1, 5, 1, 1]],
  [5, 13, [1, 1, 1, 3, 11]],
  [5, 14, [1, 3, 5, 5, 31]],
  [6, 1, [1, 3, 3, 9, 7, 49]],
  [6, 13, [1, 1, 1, 15, 21, 21]],
  [6, 16, [1, 3, 1, 13, 27, 49]],
];

/** What each bit of the index turns in the point, [dimension × bit]. */
const directions = directionWords();

function directionWords(): Int32Array {
  const words = new Int32Array(sobolDimensionCount * bitCount);
  for (let bit = 0; bit < bitCount; bit++) words[bit] = 1 << (bitCount - 1 - bit);
  polynomials.forEach(([degree, inner, first], row) => {
    const own = words.subarray((row + 1) * bitCount, (row + 2) * bitCount);
    for (let bit = 0; bit < bitCount; bit++) {
      if (bit < degree) {
        own[bit] = first[bit]! << (bitCount - 1 - bit);
        continue;
      }
      let word = own[bit - degree]! ^ (own[bit - degree]! >>> degree);
      for (let k = 1; k < degree; k++) {
        if ((inner >>> (degree - 1 - k)) & 1) word ^= own[bit - k]!;
      }
      own[bit] = word;
    }
  });
  return words;
}

/**
 * One coordinate of the Sobol' sequence in Gray-code order, as 32 bits without a sign; over 2³² it is the share.
 * Any 2^k points that begin at a multiple of 2^k fall once into each of 2^k equal strata, in every dimension.
 * @param index of the point, 0 to 2³² − 1
 * @param dimension 0 to 15
 * @source joe-kuo, section 2
 */
export function sobolWord(index: number, dimension: number): number {
  let gray = (index ^ (index >>> 1)) >>> 0;
  let word = 0;
  for (let at = dimension * bitCount; gray !== 0; at++, gray >>>= 1) {
    if (gray & 1) word ^= directions[at]!;
  }
  return word >>> 0;
}

/**
 * The shift of a dimension that belongs to a seed.
 * @param seed whole number
 * @param dimension 0 to 15
 */
export function sobolShift(seed: number, dimension: number): number {
  return new Sfc32(seed, `digital shift ${dimension}`).word();
}

/**
 * Successive coordinates of one dimension of the digitally shifted sequence, strictly between 0 and 1.
 * @param dimension 0 to 15
 * @param shift 32 bits that are turned in every point; keeps the strata
 * @param from index of the first point
 * @param out one entry per point
 */
export function fillSobol(dimension: number, shift: number, from: number, out: Float64Array): void {
  if (out.length === 0) return;
  const first = dimension * bitCount;
  let word = sobolWord(from, dimension) ^ shift;
  out[0] = ((word >>> 0) + 0.5) / 4294967296;
  for (let i = 1; i < out.length; i++) {
    // The Gray code of an index differs from the one before in the lowest set bit of the index.
    const index = from + i;
    word ^= directions[first + 31 - Math.clz32(index & -index)]!;
    out[i] = ((word >>> 0) + 0.5) / 4294967296;
  }
}
