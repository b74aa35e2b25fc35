import { describe, expect, it } from 'vitest';
import type { Standing } from '../../../src/assess/choosing/own-weights.js';
import { isTie, placesWithTies } from '../../../src/assess/choosing/ties.js';

const beating = (...beats: number[]): Standing => ({
  leadFraction: 0,
  rankFractions: new Float64Array(beats.length),
  beatFractions: Float64Array.from(beats),
  passFraction: 1,
});

describe('ties', () => {
  it.each([
    [0.34, false],
    [0.35, true],
    [0.5, true],
    [0.65, true],
    [0.66, false],
  ])('a candidate that beats another in %f of the draws is tied with it: %s', (share, tied) => {
    expect(isTie(share)).toBe(tied);
  });

  it('two tied at the top share the first place, and the next is third', () => {
    const standings = [beating(0.5, 0.55, 0.9), beating(0.45, 0.5, 0.8), beating(0.1, 0.2, 0.5)];
    expect(placesWithTies([0, 1, 2], standings)).toEqual([1, 1, 3]);
  });

  it('a chain of ties ends where the first and the last are not tied', () => {
    const standings = [beating(0.5, 0.6, 0.8), beating(0.4, 0.5, 0.6), beating(0.2, 0.4, 0.5)];
    expect(placesWithTies([0, 1, 2], standings)).toEqual([1, 1, 3]);
    expect(placesWithTies([], [])).toEqual([]);
  });
});
