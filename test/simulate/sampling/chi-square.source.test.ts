import { describe, expect, it } from 'vitest';
import { chiSquarePoint, chiSquareShare } from '../../../src/simulate/sampling/chi-square.js';

describe('sums of squares of normal numbers', () => {
  // Tables of the χ² distribution as printed in any statistics text (from memory).
  it.each([
    [1, 6.635, 3.841],
    [2, 9.21, 5.991],
    [3, 11.345, 7.815],
    [4, 13.277, 9.488],
    [5, 15.086, 11.07],
    [6, 16.812, 12.592],
    [10, 23.209, 18.307],
    [20, 37.566, 31.41],
    [30, 50.892, 43.773],
    [100, 135.807, 124.342],
  ])('of %i exceed the tabulated points in 1 and 5 of a hundred', (count, one, five) => {
    expect(Math.abs(chiSquarePoint(0.99, count) - one)).toBeLessThan(0.00051);
    expect(Math.abs(chiSquarePoint(0.95, count) - five)).toBeLessThan(0.00051);
  });

  it('of two follow −2·ln(1 − share), of four the closed form with one more term', () => {
    for (const share of [0.01, 0.3, 0.5, 0.9, 0.99, 0.9999]) {
      expect(chiSquarePoint(share, 2)).toBeCloseTo(-2 * Math.log1p(-share), 10);
    }
    for (const x of [0.1, 1, 5, 20, 60]) {
      expect(chiSquareShare(x, 4)).toBeCloseTo(1 - Math.exp(-x / 2) * (1 + x / 2), 13);
    }
  });

  it('have points that undo their shares', () => {
    for (const count of [1, 2, 3, 7, 12, 50]) {
      for (const share of [0.001, 0.05, 0.5, 0.8, 0.99, 0.999]) {
        expect(chiSquareShare(chiSquarePoint(share, count), count)).toBeCloseTo(share, 11);
      }
    }
    expect(chiSquareShare(0, 3)).toBe(0);
    expect(chiSquareShare(-1, 3)).toBe(0);
  });
});
