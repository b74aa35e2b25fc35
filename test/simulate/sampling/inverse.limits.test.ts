import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bounds, quantile } from '../../../src/quantity/quantile.js';
import type { Spread } from '../../../src/quantity/spread.js';
import { factorBounds, fillDraws, fillMultiplied } from '../../../src/simulate/sampling/inverse.js';
import { meanOf } from './moments.js';

const middles = (count: number) => Float64Array.from({ length: count }, (_, i) => (i + 0.5) / count);
const shares = Float64Array.of(0, 1e-9, 0.001, 0.02, 0.1, 0.25, 0.4999, 0.5, 0.75, 0.9, 0.97, 0.9999, 1);

function draws(
  spread: Spread | null,
  nominal: number,
  bounds: Bounds | null = null,
  at = shares,
): Float64Array {
  const out = new Float64Array(at.length);
  fillDraws(spread, nominal, bounds, at, out);
  return out;
}

function multiplied(
  factors: Spread,
  nominal: number,
  bounds: Bounds | null = null,
  at = shares,
): Float64Array {
  const out = new Float64Array(at.length);
  fillMultiplied(factors, nominal, bounds, at, out);
  return out;
}

const size = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
const part = fc.double({ min: 0, max: 1, noNaN: true });
const anySpread: fc.Arbitrary<Spread | null> = fc.oneof(
  fc.constant(null),
  fc.constant<Spread>({ shape: 'exact' }),
  fc
    .tuple(size, size)
    .map(([low, width]): Spread => ({ shape: 'uniform', low: low - 1, high: low - 1 + width })),
  fc
    .tuple(size, size, part)
    .map(
      ([low, width, at]): Spread => ({ shape: 'triangular', low, mode: low + at * width, high: low + width }),
    ),
  size.map((halfWidth): Spread => ({ shape: 'normal', halfWidth })),
);

describe('draws of a spread', () => {
  it('agree with the quantiles of the same spread to 1e-9, in every shape, with bounds and without', () => {
    const bounds = fc.option(
      fc.tuple(size, size).map(([low, width]): Bounds => ({ low: low - 5, high: low - 5 + width })),
    );
    fc.assert(
      fc.property(anySpread, size, bounds, (spread, nominal, within) => {
        const found = draws(spread, nominal, within);
        found.forEach((value, i) => {
          const expected = quantile(spread, nominal, shares[i]!, within ?? undefined);
          expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(expected)));
        });
      }),
      { numRuns: 500 },
    );
  });

  it('a range from 300 to 20,000 is even in the logarithm, one from 2 to 4 is even as it stands (closed form)', () => {
    const wide = draws({ shape: 'uniform', low: 300, high: 20_000 }, 2000, null, Float64Array.of(0.5));
    expect(wide[0]).toBeCloseTo(Math.sqrt(300 * 20_000), 9);
    expect(draws({ shape: 'uniform', low: 2, high: 4 }, 3, null, Float64Array.of(0.5))[0]).toBe(3);
  });

  it('a normal spread keeps its mean, and its deviation shrinks to 0.98658 of σ by the cut at 3 σ', () => {
    // Closed form: variance of a normal number cut at ±c is 1 − 2c·φ(c)/(2Φ(c) − 1) = 0.9733369 at c = 3.
    const found = draws({ shape: 'normal', halfWidth: 1.96 }, 10, null, middles(20_000));
    expect(meanOf(found)).toBeCloseTo(10, 9);
    expect(meanOf(found.map((value) => (value - 10) ** 2))).toBeCloseTo(0.9733369, 4);
    expect(Math.max(...found)).toBeLessThanOrEqual(13);
  });

  it('a normal spread beside a bound is cut there and not heaped up', () => {
    const found = draws({ shape: 'normal', halfWidth: 1.96 }, 0, { low: 0, high: 100 }, middles(20_000));
    expect(Math.min(...found)).toBeGreaterThan(0);
    // Closed form: mean of the upper half of a normal law, cut at 3: (φ(0) − φ(3))/(Φ(3) − ½) = 0.7911575.
    expect(meanOf(found)).toBeCloseTo(0.7911575, 4);
  });

  it('a spread without width, or wholly outside its bounds, stays at nominal', () => {
    expect([...draws({ shape: 'normal', halfWidth: 0 }, 5)]).toEqual(Array(shares.length).fill(5));
    expect([...draws({ shape: 'normal', halfWidth: 1 }, 5, { low: 9, high: 10 })]).toEqual(
      Array(shares.length).fill(5),
    );
    expect([...draws({ shape: 'triangular', low: 2, mode: 2, high: 2 }, 2)]).toEqual(
      Array(shares.length).fill(2),
    );
  });

  it('may be written over their own shares', () => {
    const own = Float64Array.from(shares);
    fillDraws({ shape: 'triangular', low: 1, mode: 2, high: 9 }, 2, null, own, own);
    expect(own).toEqual(draws({ shape: 'triangular', low: 1, mode: 2, high: 9 }, 2));
  });
});

describe('a spread of factors', () => {
  const flattering: Spread = { shape: 'triangular', low: 0.6, mode: 0.85, high: 1.05 };

  it('×0.6..0.85..1.05 on a listed 4 N·m is centred well under the listed figure (closed form)', () => {
    const found = multiplied(flattering, 4, null, middles(20_000));
    // Mean of a triangle: a third of the sum of its corners. The listed figure is near the top: 1 − 0.05²/(0.45·0.2).
    expect(meanOf(found)).toBeCloseTo((4 * (0.6 + 0.85 + 1.05)) / 3, 6);
    const under = found.filter((value) => value < 4).length / found.length;
    expect(under).toBeCloseTo(1 - 0.05 ** 2 / (0.45 * 0.2), 3);
  });

  it('is the same as the range of the products for a figure above zero', () => {
    const range: Spread = { shape: 'triangular', low: 2.4, mode: 3.4, high: 4.2 };
    const products = draws(range, 4);
    multiplied(flattering, 4).forEach((value, i) => {
      expect(value).toBeCloseTo(products[i]!, 12);
    });
  });

  it('takes the logarithm by the ratio of its own ends, also for a negative figure', () => {
    const doubled: Spread = { shape: 'triangular', low: 0.5, mode: 1, high: 2 };
    expect(multiplied(doubled, 7, null, Float64Array.of(0.5))[0]).toBeCloseTo(7, 12);
    expect(multiplied(doubled, -7, null, Float64Array.of(0.5))[0]).toBeCloseTo(-7, 12);
    expect(
      multiplied({ shape: 'uniform', low: 0.5, high: 2 }, -7, null, Float64Array.of(0.25))[0],
    ).toBeCloseTo(-7 / Math.SQRT2, 12);
  });

  it('of a normal law lies about the figure and heeds the bounds of the figure', () => {
    const percent: Spread = { shape: 'normal', halfWidth: 0.1 };
    expect([...multiplied(percent, 30)]).toEqual(
      [...draws({ shape: 'normal', halfWidth: 3 }, 30)].map((value) => expect.closeTo(value, 9)),
    );
    const bounded = multiplied(percent, -30, { low: -31, high: 0 });
    expect(Math.min(...bounded)).toBeGreaterThanOrEqual(-31 - 1e-12);
    expect(factorBounds(-30, { low: -31, high: 0 })).toEqual({ low: -0, high: 31 / 30 });
    expect(multiplied(percent, 0, { low: 0, high: 1 }).every((value) => value === 0)).toBe(true);
  });
});
