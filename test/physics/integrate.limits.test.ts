import { describe, expect, it } from 'vitest';
import { expRatio1, expRatio2, expRatio3, findRoot } from '../../src/physics/integrate.js';

describe('the root search', () => {
  const cases = [
    ['a straight line', (x: number) => x - 0.3, 0, 1, 0.3],
    ['a square', (x: number) => x * x - 2, 0, 2, Math.SQRT2],
    ['the golden fixed point of cosine', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['a triple root', (x: number) => (x - 1) ** 3, 0, 3, 1],
    ['a very steep step', (x: number) => Math.tanh(1e6 * (x - 0.123)), -1, 1, 0.123],
    ['ends in reverse order', (x: number) => x - 0.3, 1, 0, 0.3],
  ] as const;

  it.each(cases)('finds the root of %s', (_, f, low, high, root) => {
    expect(findRoot(f, low, high, 1e-12)).toBeCloseTo(root, 9);
  });

  it('takes few steps on a smooth function', () => {
    let calls = 0;
    findRoot(
      (x) => {
        calls++;
        return Math.exp(x) - 5;
      },
      -2,
      6,
    );
    expect(calls).toBeLessThan(15);
  });

  it('returns an end that is a root, and NaN when there is no change of sign', () => {
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
    expect(findRoot((x) => x + 5, 0, 1)).toBeNaN();
  });
});

describe('the exponential ratios', () => {
  it('have their series values at zero', () => {
    expect([expRatio1(0), expRatio2(0), expRatio3(0)]).toEqual([1, 0.5, expect.closeTo(1 / 6, 15)]);
  });

  it('keep their digits on both sides of the change from series to closed form', () => {
    for (const z of [-0.5, 0.5]) {
      expect(expRatio2(z * (1 + 1e-12))).toBeCloseTo(expRatio2(z * (1 - 1e-12)), 11);
      expect(expRatio3(z * (1 + 1e-12))).toBeCloseTo(expRatio3(z * (1 - 1e-12)), 11);
    }
  });

  it('follow from one another by their recurrence', () => {
    for (const z of [-300, -20, -3, -0.4, -0.01, 0.2, 2]) {
      expect(z * expRatio2(z) + 1).toBeCloseTo(expRatio1(z), 12);
      expect(z * expRatio3(z) + 0.5).toBeCloseTo(expRatio2(z), 12);
    }
  });
});
