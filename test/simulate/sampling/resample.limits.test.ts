import { describe, expect, it } from 'vitest';
import { fillDraws } from '../../../src/simulate/sampling/inverse.js';
import { effectiveDrawCount, resample, weightedDraws } from '../../../src/simulate/sampling/resample.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';
import { fillSobol } from '../../../src/simulate/sampling/sobol.js';
import { correlation, meanOf, varianceOf } from './moments.js';

/** Draws of a standard normal number and the log likelihood of a reading that has a normal error. */
function measuredOnce(reading: number, errorSigma: number, count = 32_768) {
  const x = new Float64Array(count);
  fillSobol(0, 0, 0, x);
  fillDraws({ shape: 'normal', halfWidth: 1.96 }, 0, null, x, x);
  return { x, logLikelihoods: x.map((value) => -0.5 * ((reading - value) / errorSigma) ** 2 + 100) };
}

describe('effective draws', () => {
  it('equal weights count in full, one weight alone counts once, none not at all (closed form)', () => {
    expect(effectiveDrawCount(new Float64Array(500).fill(0.3))).toBeCloseTo(500, 9);
    expect(effectiveDrawCount(Float64Array.of(0, 0, 7, 0))).toBe(1);
    expect(effectiveDrawCount(new Float64Array(9))).toBe(0);
    expect(effectiveDrawCount(Float64Array.of(3, 1))).toBeCloseTo(16 / 10, 12);
  });

  it('of a normal prior and a normal reading are those of the closed form', () => {
    // E w = s/√(1+s²)·exp(−m²/2(1+s²)); E w² is the same with s/√2. With m = 1, s = 0.5: n·0.46246.
    const { logLikelihoods } = measuredOnce(1, 0.5);
    const mean = (s: number) => (s / Math.sqrt(1 + s * s)) * Math.exp(-1 / (2 * (1 + s * s)));
    const expected = mean(0.5) ** 2 / mean(0.5 / Math.SQRT2);
    const found = weightedDraws(logLikelihoods);
    expect(found.temperingRatio).toBe(1);
    expect(found.effectiveCount / 32_768).toBeCloseTo(expected, 2);
    expect(found.plainEffectiveCount).toBe(found.effectiveCount);
  });
});

describe('weights of measured draws', () => {
  it('give the mean and variance of the closed form: 0.8 and 0.2', () => {
    const { x, logLikelihoods } = measuredOnce(1, 0.5);
    const { weightFractions } = weightedDraws(logLikelihoods);
    const mean = x.reduce((sum, value, i) => sum + value * weightFractions[i]!, 0);
    const variance = x.reduce((sum, value, i) => sum + (value - mean) ** 2 * weightFractions[i]!, 0);
    expect(mean).toBeCloseTo(0.8, 2);
    expect(variance).toBeCloseTo(0.2, 2);
    expect(weightFractions.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('are softened, as little as need be, until 200 draws count', () => {
    const { logLikelihoods } = measuredOnce(2.5, 0.001);
    const found = weightedDraws(logLikelihoods);
    expect(found.plainEffectiveCount).toBeLessThan(200);
    expect(found.effectiveCount).toBeGreaterThanOrEqual(200);
    expect(found.effectiveCount).toBeLessThan(200.1);
    expect(found.temperingRatio).toBeGreaterThan(0);
    expect(found.temperingRatio).toBeLessThan(1);
  });

  it('leave out draws that cannot be, and say when too few are left', () => {
    const log = new Float64Array(1000).fill(Number.NEGATIVE_INFINITY);
    log.fill(Number.NaN, 0, 200);
    log.fill(-3, 200, 250);
    const found = weightedDraws(log);
    expect(found.effectiveCount).toBeCloseTo(50, 9);
    expect(found.weightFractions[220]).toBeCloseTo(1 / 50, 12);
    expect([found.weightFractions[0], found.weightFractions[999]]).toEqual([0, 0]);
    const none = weightedDraws(new Float64Array(10).fill(Number.NaN));
    expect(none.effectiveCount).toBe(0);
    expect(none.weightFractions.every((weight) => weight === 0)).toBe(true);
  });
});

describe('resampling', () => {
  it('takes each draw as often as its weight says, one up or down', () => {
    const random = new Sfc32(1);
    for (let round = 0; round < 50; round++) {
      const weights = Float64Array.from({ length: 300 }, () => random.exponential() ** 3);
      const total = weights.reduce((sum, weight) => sum + weight, 0);
      const times = new Float64Array(300);
      for (const index of resample(weights, 2048, random)) times[index]!++;
      times.forEach((count, i) => {
        expect(Math.abs(count - (2048 * weights[i]!) / total)).toBeLessThan(1 + 1e-9);
      });
    }
  });

  it('never takes a draw of weight zero, not even at the ends', () => {
    for (let seed = 0; seed < 100; seed++) {
      const taken = resample(Float64Array.of(0, 0.1, 0, 0.3, 0, 0), 64, new Sfc32(seed));
      expect([...new Set(taken)].sort()).toEqual([1, 3]);
    }
    expect(() => resample(new Float64Array(3), 5, new Sfc32(1))).toThrow('no draw has a weight');
  });

  it('keeps the closed form of the weighted draws for every count and seed, in an order that says nothing', () => {
    const { x, logLikelihoods } = measuredOnce(1, 0.5);
    const { weightFractions } = weightedDraws(logLikelihoods);
    for (const count of [512, 2000, 2048, 4096]) {
      for (let seed = 0; seed < 10; seed++) {
        const taken = resample(weightFractions, count, new Sfc32(seed));
        const posterior = Float64Array.from(taken, (index) => x[index]!);
        expect(Math.abs(meanOf(posterior) - 0.8)).toBeLessThan(4 * Math.sqrt(0.2 / count));
        expect(Math.abs(varianceOf(posterior) - 0.2)).toBeLessThan(4 * 0.2 * Math.sqrt(2 / count));
        const r = correlation(Float64Array.from(taken), Float64Array.from(taken.keys()));
        expect(Math.abs(r)).toBeLessThan(4 / Math.sqrt(count));
      }
    }
  });
});
