import { describe, expect, it } from 'vitest';
import {
  fillSobol,
  sobolDimensionCount,
  sobolShift,
  sobolWord,
} from '../../../src/simulate/sampling/sobol.js';

const dimensions = Array.from({ length: sobolDimensionCount }, (_, dimension) => dimension);

/** Successive points of one dimension. */
function points(dimension: number, from: number, count: number, shift = 0): number[] {
  const out = new Float64Array(count);
  fillSobol(dimension, shift, from, out);
  return [...out];
}

/** Every stratum of a block of 2^k points, in the order of the points. */
function strata(dimension: number, from: number, k: number, shift = 0): number[] {
  return points(dimension, from, 2 ** k, shift).map((point) => Math.floor(point * 2 ** k));
}

const eachOnce = (places: number[]) => new Set(places).size === places.length;

describe('points of the Sobol’ sequence', () => {
  // Joe & Kuo 2008, direction numbers D(6), points in Gray-code order; the values were computed with another
  // implementation of the same table (SciPy 1.17.1, stats.qmc.Sobol without scrambling), not with this one.
  it.each([
    [0, [0, 0, 0, 0, 0, 0]],
    [1, [0.5, 0.5, 0.5, 0.5, 0.5, 0.5]],
    [2, [0.75, 0.25, 0.25, 0.25, 0.75, 0.75]],
    [3, [0.25, 0.75, 0.75, 0.75, 0.25, 0.25]],
    [4, [0.375, 0.375, 0.625, 0.875, 0.375, 0.125]],
    [5, [0.875, 0.875, 0.125, 0.375, 0.875, 0.625]],
    [6, [0.625, 0.125, 0.875, 0.625, 0.625, 0.875]],
    [7, [0.125, 0.625, 0.375, 0.125, 0.125, 0.375]],
  ])('number %i begins as published', (index, expected) => {
    expect(expected.map((_, dimension) => sobolWord(index, dimension) / 2 ** 32)).toEqual(expected);
  });

  it('number 1000 agrees in all sixteen dimensions and to the last bit', () => {
    expect(dimensions.map((dimension) => sobolWord(1000, dimension))).toEqual([
      943718400, 415236096, 2227175424, 2906652672, 1203765248, 3896508416, 197132288, 3862953984, 2151677952,
      297795584, 364904448, 1094713344, 692060160, 1648361472, 616562688, 1589641216,
    ]);
  });

  it('the first 2^16 points fall once into each of the 2^16 corners (property A, Joe & Kuo 2008, from memory)', () => {
    const met = new Uint8Array(2 ** 16);
    for (let index = 0; index < 2 ** 16; index++) {
      let corner = 0;
      for (const dimension of dimensions) corner = corner * 2 + (sobolWord(index, dimension) >>> 31);
      met[corner]!++;
    }
    expect(met.every((times) => times === 1)).toBe(true);
  });
});

describe('strata', () => {
  it.each(dimensions)(
    'of dimension %i are each met once by every block of 2^k points, shifted or not',
    (dimension) => {
      const shift = sobolShift(42, dimension);
      for (const k of [1, 2, 3, 5, 8, 11]) {
        for (const block of [0, 1, 2, 7]) {
          expect(eachOnce(strata(dimension, block * 2 ** k, k))).toBe(true);
          expect(eachOnce(strata(dimension, block * 2 ** k, k, shift))).toBe(true);
        }
      }
    },
  );

  it('of the first two dimensions together are met once each, however 2^10 boxes are cut', () => {
    const [first, second] = [points(0, 0, 1024), points(1, 0, 1024)];
    for (let wide = 0; wide <= 10; wide++) {
      const boxes = first.map((point, index) => {
        const x = Math.floor(point * 2 ** wide);
        return x * 2 ** (10 - wide) + Math.floor(second[index]! * 2 ** (10 - wide));
      });
      expect(eachOnce(boxes)).toBe(true);
    }
  });
});

describe('a range of points', () => {
  it('is the same as each point by itself, wherever it begins', () => {
    for (const from of [0, 1, 37, 4095, 2 ** 31 - 3, 2 ** 32 - 60]) {
      for (const dimension of [0, 1, 9, 15]) {
        const shift = sobolShift(1, dimension);
        const byItself = (index: number) => (((sobolWord(index, dimension) ^ shift) >>> 0) + 0.5) / 2 ** 32;
        const range = points(dimension, from, 50, shift);
        expect(range).toEqual(range.map((_, i) => byItself(from + i)));
      }
    }
    expect(() => fillSobol(0, 0, 5, new Float64Array(0))).not.toThrow();
  });

  it('stays strictly inside 0 and 1 and moves with the seed', () => {
    const many = points(3, 0, 4096, sobolShift(9, 3));
    expect(Math.min(...many)).toBeGreaterThan(0);
    expect(Math.max(...many)).toBeLessThan(1);
    expect(points(3, 0, 1, 0)[0]).toBeGreaterThan(0);
    expect(points(3, 0, 1, -1)[0]).toBeLessThan(1);
    const shifts = Array.from({ length: 100 }, (_, seed) => sobolShift(seed, 3));
    expect(new Set(shifts).size).toBe(100);
  });
});
