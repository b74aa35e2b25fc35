import { describe, expect, it } from 'vitest';
import { latinColumn } from '../../../src/simulate/sampling/latin-hypercube.js';
import { correlation, meanOf, varianceOf } from './moments.js';

const strata = (column: Float64Array) => [...column].map((share) => Math.floor(share * column.length));

describe('a column of a Latin hypercube', () => {
  // McKay, Beckman & Conover 1979: the definition of the scheme.
  it('meets every one of 50 + 50 strata once in two dimensions', () => {
    for (let seed = 0; seed < 200; seed++) {
      for (const name of ['feature.massKg', 'pack.capacityC']) {
        expect(strata(latinColumn(seed, name, 50)).sort((a, b) => a - b)).toEqual([...Array(50).keys()]);
      }
    }
  });

  it('keeps to its strata with very many draws', () => {
    const places = strata(latinColumn(3, 'a', 32_768));
    expect(new Set(places).size).toBe(32_768);
  });

  it('lies at random inside the strata and in random order', () => {
    const column = latinColumn(1, 'a', 20_000);
    const inside = column.map((share) => (share * column.length) % 1);
    expect(Math.abs(meanOf(inside) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / 20_000));
    expect(Math.abs(varianceOf(inside) - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / 20_000));
    const order = Float64Array.from(column.keys());
    expect(Math.abs(correlation(column, order))).toBeLessThan(4 / Math.sqrt(20_000));
    expect(Math.abs(correlation(column.subarray(1), column.subarray(0, -1)))).toBeLessThan(
      4 / Math.sqrt(20_000),
    );
  });

  it('is the same for the same seed and name, and independent of other columns', () => {
    expect(latinColumn(5, 'a', 64)).toEqual(latinColumn(5, 'a', 64));
    const r = correlation(latinColumn(5, 'a', 20_000), latinColumn(5, 'b', 20_000));
    expect(Math.abs(r)).toBeLessThan(4 / Math.sqrt(20_000));
    const next = correlation(latinColumn(5, 'a', 20_000), latinColumn(6, 'a', 20_000));
    expect(Math.abs(next)).toBeLessThan(4 / Math.sqrt(20_000));
  });
});
