import { describe, expect, it } from 'vitest';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';
import { correlation, meanOf, varianceOf } from './moments.js';

const seedCount = 20_000;

/** Largest distance between the shares of sorted numbers and an even distribution, times √n. */
function unevenness(numbers: Float64Array): number {
  const sorted = Float64Array.from(numbers).sort();
  const away = sorted.map((x, i) => Math.max(Math.abs(x - i / sorted.length), (i + 1) / sorted.length - x));
  return Math.max(...away) * Math.sqrt(sorted.length);
}

/** The n-th number of each of 20,000 neighbouring seeds. */
function drawsOverSeeds(skipped: number, first = 0): Float64Array {
  return Float64Array.from({ length: seedCount }, (_, i) => {
    const random = new Sfc32(first + i);
    for (let k = 0; k < skipped; k++) random.next();
    return random.next();
  });
}

describe('random numbers of neighbouring seeds', () => {
  it.each([
    ['first', 0, 0],
    ['second', 1, 0],
    ['tenth', 9, 0],
    ['first, of seeds beyond 32 bits', 0, 2 ** 32 - 10_000],
  ])('%s draws are even and know nothing of each other', (_, skipped, first) => {
    const draws = drawsOverSeeds(skipped, first);
    // Mean 1/2, variance 1/12, and √n times the largest distance below its 99.9 % point 1.95 (Kolmogorov; memory).
    expect(Math.abs(meanOf(draws) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / seedCount));
    expect(Math.abs(varianceOf(draws) - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / seedCount));
    expect(unevenness(draws)).toBeLessThan(1.95);
    for (const lag of [1, 2, 3, 64]) {
      const r = correlation(draws.subarray(0, seedCount - lag), draws.subarray(lag));
      expect(Math.abs(r)).toBeLessThan(4 / Math.sqrt(seedCount));
    }
  });

  it('the second draw does not follow from the first', () => {
    expect(Math.abs(correlation(drawsOverSeeds(0), drawsOverSeeds(1)))).toBeLessThan(
      4 / Math.sqrt(seedCount),
    );
  });
});

describe('one stream', () => {
  it('is the same for the same seed and purpose, and another for another purpose', () => {
    const five = (seed: number, purpose: string) => {
      const random = new Sfc32(seed, purpose);
      return Array.from({ length: 5 }, () => random.next());
    };
    expect(five(7, 'a')).toEqual(five(7, 'a'));
    expect(five(7, 'a')).not.toEqual(five(7, 'b'));
    expect(five(7, 'a')).not.toEqual(five(8, 'a'));
  });

  it('fills 53 bits: the low half of them is as even as the whole', () => {
    const random = new Sfc32(3);
    const low = Float64Array.from({ length: seedCount }, () => (random.next() * 2 ** 27) % 1);
    expect(unevenness(low)).toBeLessThan(1.95);
  });

  it('gives exponential numbers of mean and variance 1, and whole numbers below a count alike often', () => {
    const random = new Sfc32(11);
    const waits = Float64Array.from({ length: 50_000 }, () => random.exponential());
    expect(Math.abs(meanOf(waits) - 1)).toBeLessThan(4 / Math.sqrt(50_000));
    // The fourth central moment of the exponential law is 9, so the variance of (x − 1)² is 8.
    expect(Math.abs(varianceOf(waits) - 1)).toBeLessThan(4 * Math.sqrt(8 / 50_000));
    const times = new Float64Array(6);
    for (let i = 0; i < 60_000; i++) times[random.below(6)]!++;
    for (const count of times) expect(Math.abs(count - 10_000)).toBeLessThan(4 * Math.sqrt(10_000 * (5 / 6)));
  });

  it('shuffles into every order alike often', () => {
    const random = new Sfc32(5);
    const times = new Map<string, number>();
    for (let i = 0; i < 24_000; i++) {
      const list = Int32Array.of(0, 1, 2, 3);
      random.shuffle(list);
      times.set(list.join(''), (times.get(list.join('')) ?? 0) + 1);
    }
    expect(times.size).toBe(24);
    for (const count of times.values()) expect(Math.abs(count - 1000)).toBeLessThan(4 * Math.sqrt(1000));
  });
});
