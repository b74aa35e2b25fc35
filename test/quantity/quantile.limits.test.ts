import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inverseNormalShare, normalShare } from '../../src/quantity/normal.js';
import {
  halfWidth95,
  isLogarithmic,
  median,
  quantile,
  spreadQuantiles,
} from '../../src/quantity/quantile.js';
import type { Spread } from '../../src/quantity/spread.js';

describe('quantiles of a spread', () => {
  it('lie evenly between two ends, in the logarithm when the ratio is 3 or more (closed form)', () => {
    expect(spreadQuantiles({ shape: 'uniform', low: 2, high: 4 }, 3)).toEqual({
      p10: 2.2,
      p50: 3,
      p90: expect.closeTo(3.8, 12),
    });
    const wide = spreadQuantiles({ shape: 'uniform', low: 1, high: 100 }, 10);
    expect(wide.p10).toBeCloseTo(10 ** 0.2, 12);
    expect(wide.p50).toBeCloseTo(10, 12);
    expect(wide.p90).toBeCloseTo(10 ** 1.8, 12);
  });

  it('follow the triangle, in the logarithm when the ratio is 3 or more (closed form)', () => {
    const symmetric: Spread = { shape: 'triangular', low: 2, mode: 3, high: 4 };
    expect(quantile(symmetric, 3, 0.5)).toBeCloseTo(3, 12);
    expect(quantile(symmetric, 3, 0.125)).toBeCloseTo(2.5, 12);
    const wide: Spread = { shape: 'triangular', low: 1, mode: 10, high: 100 };
    expect(quantile(wide, 10, 0.125)).toBeCloseTo(10 ** 0.5, 12);
    expect(quantile({ shape: 'triangular', low: 0, mode: 0.15, high: 0.8 }, 0.15, 0.15 / 0.8)).toBeCloseTo(
      0.15,
      12,
    );
  });

  it('cut a normal spread at three deviations and at physical bounds', () => {
    const spread: Spread = { shape: 'normal', halfWidth: 1.96 };
    expect(quantile(spread, 10, 0)).toBeCloseTo(7, 6);
    expect(quantile(spread, 10, 1)).toBeCloseTo(13, 6);
    expect(quantile(spread, 10, 0.5)).toBeCloseTo(10, 12);
    expect(quantile(spread, 0.5, 0, { low: 0, high: 1 })).toBeCloseTo(0, 8);
    expect(quantile(spread, 0.5, 1, { low: 0, high: 1 })).toBeCloseTo(1, 8);
  });

  it('of an exact value, or of none, are the value', () => {
    expect(spreadQuantiles(null, 5)).toEqual({ p10: 5, p50: 5, p90: 5 });
    expect(halfWidth95({ shape: 'exact' }, 5)).toBe(0);
  });

  it('never fall as the share grows, and stay inside the ends', () => {
    const spread = fc
      .tuple(
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        fc.double({ min: 1.001, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      )
      .map(
        ([low, ratio, at]): Spread => ({
          shape: 'triangular',
          low,
          mode: low + at * low * (ratio - 1),
          high: low * ratio,
        }),
      );
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(spread, share, share, (shape, p, q) => {
        if (shape.shape !== 'triangular') return;
        const [a, b] = [
          quantile(shape, shape.mode, Math.min(p, q)),
          quantile(shape, shape.mode, Math.max(p, q)),
        ];
        expect(a).toBeLessThanOrEqual(b * (1 + 1e-12));
        expect(a).toBeGreaterThanOrEqual(shape.low * (1 - 1e-12));
        expect(b).toBeLessThanOrEqual(shape.high * (1 + 1e-12));
      }),
    );
  });

  it('take a range in the logarithm from a ratio of three on, above zero only', () => {
    expect([isLogarithmic(1, 3), isLogarithmic(1, 2.9), isLogarithmic(0, 3), isLogarithmic(-3, 9)]).toEqual([
      true,
      false,
      false,
      false,
    ]);
    expect(median({ shape: 'uniform', low: 0.5, high: 2 }, 1)).toBeCloseTo(1, 12);
  });

  it('tell the half width that holds 95 of a hundred', () => {
    expect(halfWidth95({ shape: 'normal', halfWidth: 3 }, 10)).toBe(3);
    expect(halfWidth95({ shape: 'uniform', low: 9, high: 11 }, 10)).toBeCloseTo(0.95, 12);
  });
});

describe('the normal distribution', () => {
  // Tables of the normal distribution (Abramowitz & Stegun, table 26.1; from memory).
  it('agrees with printed tables', () => {
    expect(normalShare(0)).toBe(0.5);
    expect(normalShare(1)).toBeCloseTo(0.841344746068543, 14);
    expect(normalShare(-3)).toBeCloseTo(0.00134989803163, 14);
    expect(inverseNormalShare(0.9)).toBeCloseTo(1.2815515655446, 12);
    expect(inverseNormalShare(0.975)).toBeCloseTo(1.95996398454005, 12);
  });

  it('is undone by its inverse', () => {
    for (let x = -3; x <= 3; x += 0.05) expect(inverseNormalShare(normalShare(x))).toBeCloseTo(x, 12);
  });
});
