import { describe, expect, it } from 'vitest';
import {
  fillSobol,
  sobolDimensionCount,
  sobolPoint,
  sobolShift,
  sobolWord,
} from '../../../src/simulate/sampling/sobol.js';

const dimensions = Array.from({ length: sobolDimensionCount }, (_, dimension) => dimension);

/** Every stratum of a block of 2^k points, in the order of the points. */
function strata(dimension: number, from: number, k: number, shift = 0): number[] {
  return Array.from({ length: 2 ** k }, (_, i) =>
    Math.floor(sobolPoint(from + i, dimension, shift) * 2 ** k),
  );
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
    for (let wide = 0; wide <= 10; wide++) {
      const boxes = Array.from({ length: 1024 }, (_, index) => {
        const x = Math.floor(sobolPoint(index, 0) * 2 ** wide);
        return x * 2 ** (10 - wide) + Math.floor(sobolPoint(index, 1) * 2 ** (10 - wide));
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
        const points = new Float64Array(50);
        fillSobol(dimension, shift, from, points);
        expect([...points]).toEqual([...points.keys()].map((i) => sobolPoint(from + i, dimension, shift)));
      }
    }
    expect(() => fillSobol(0, 0, 5, new Float64Array(0))).not.toThrow();
  });

  it('stays strictly inside 0 and 1 and moves with the seed', () => {
    const points = new Float64Array(4096);
    fillSobol(3, sobolShift(9, 3), 0, points);
    expect(Math.min(...points)).toBeGreaterThan(0);
    expect(Math.max(...points)).toBeLessThan(1);
    expect(sobolPoint(0, 3, 0)).toBeGreaterThan(0);
    expect(sobolPoint(0, 3, -1)).toBeLessThan(1);
    const shifts = Array.from({ length: 100 }, (_, seed) => sobolShift(seed, 3));
    expect(new Set(shifts).size).toBe(100);
  });
});
