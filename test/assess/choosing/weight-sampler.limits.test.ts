import { describe, expect, it } from 'vitest';
import {
  anyWeights,
  type WeightSampler,
  weightsInOrder,
} from '../../../src/assess/choosing/weight-sampler.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';

const drawCount = 40_000;

function drawn(sampler: WeightSampler, criterionCount: number): Float64Array[] {
  return Array.from({ length: drawCount }, () => {
    const weights = new Float64Array(criterionCount);
    sampler(weights);
    return weights;
  });
}
const mean = (draws: Float64Array[], of: (weights: Float64Array) => number) =>
  draws.reduce((sum, weights) => sum + of(weights), 0) / draws.length;
/** Largest distance of a sampled share from a true one that chance explains: four standard errors. */
const chance = (share: number) => 4 * Math.sqrt((share * (1 - share)) / drawCount);

describe('weights of which nothing is known', () => {
  const three = drawn(anyWeights(new Sfc32(1)), 3);

  it.each([0, 1, 2])(
    'criterion %i of three outweighs the two others in a quarter of them (closed form)',
    (k) => {
      // P(w > ½) = (1 − ½)² on the simplex; uniform numbers over their sum would give 1/6.
      const found = mean(three, (weights) => (weights[k]! > 0.5 ? 1 : 0));
      expect(Math.abs(found - 0.25)).toBeLessThan(chance(0.25));
    },
  );

  it('are at least 0, add up to 1, and have the mean and variance of the uniform law (closed form)', () => {
    const five = drawn(anyWeights(new Sfc32(2)), 5);
    for (const weights of five.slice(0, 1000)) {
      expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
      expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    }
    // Mean 1/n, variance (n − 1)/(n²(n + 1)) = 4/150.
    for (const k of [0, 4]) {
      expect(Math.abs(mean(five, (weights) => weights[k]!) - 0.2)).toBeLessThan(
        4 * Math.sqrt(4 / 150 / drawCount),
      );
      expect(mean(five, (weights) => (weights[k]! - 0.2) ** 2)).toBeCloseTo(4 / 150, 3);
    }
  });
});

describe('weights that keep an order', () => {
  it('keep it, and have the centroid of their part as mean: 11/18, 5/18, 2/18 (closed form)', () => {
    const draws = drawn(weightsInOrder(new Sfc32(3), [2, 5, 1]), 3);
    for (const weights of draws) {
      expect(weights[1]! >= weights[0]! && weights[0]! >= weights[2]!).toBe(true);
    }
    const centre = [0, 1, 2].map((k) => mean(draws, (weights) => weights[k]!));
    [5 / 18, 11 / 18, 2 / 18].forEach((expected, k) => {
      expect(Math.abs(centre[k]! - expected)).toBeLessThan(4 * Math.sqrt(0.02 / drawCount));
    });
    expect(mean(draws, (weights) => weights.reduce((sum, weight) => sum + weight, 0))).toBeCloseTo(1, 12);
  });

  it('are spread as the sorted weights of the whole simplex are', () => {
    const ordered = drawn(weightsInOrder(new Sfc32(4), [4, 3, 2, 1]), 4);
    const sorted = drawn(anyWeights(new Sfc32(5)), 4).map((weights) => weights.sort().reverse());
    for (const k of [0, 1, 2, 3]) {
      for (const bound of [0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7]) {
        const [a, b] = [ordered, sorted].map((draws) =>
          mean(draws, (weights) => (weights[k]! < bound ? 1 : 0)),
        );
        expect(Math.abs(a! - b!)).toBeLessThan(1.5 * chance(Math.min(0.5, Math.max(b!, 0.001))));
      }
    }
  });

  it('leave criteria of equal weight free among each other', () => {
    const draws = drawn(weightsInOrder(new Sfc32(6), [1, 3, 1]), 3);
    const centre = [0, 1, 2].map((k) => mean(draws, (weights) => weights[k]!));
    // The two lower parts of the centroid are shared: (5/18 + 2/18)/2.
    [7 / 36, 11 / 18, 7 / 36].forEach((expected, k) => {
      expect(Math.abs(centre[k]! - expected)).toBeLessThan(4 * Math.sqrt(0.02 / drawCount));
    });
    const above = mean(draws, (weights) => (weights[0]! > weights[2]! ? 1 : 0));
    expect(Math.abs(above - 0.5)).toBeLessThan(chance(0.5));
    const all = drawn(weightsInOrder(new Sfc32(7), [1, 1, 1]), 3);
    expect(Math.abs(mean(all, (weights) => (weights[0]! > 0.5 ? 1 : 0)) - 0.25)).toBeLessThan(chance(0.25));
  });
});
