import { describe, expect, it } from 'vitest';
import { normalisedWeights, tier } from '../../../src/assess/choosing/drawn-worths.js';
import { standings } from '../../../src/assess/choosing/own-weights.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';
import { fixed, single } from './drawn.js';

const alone = Float64Array.of(1);

describe('with the user’s own weights', () => {
  it('a candidate leads, ranks and beats as often as it does draw by draw', () => {
    const [a, b, c] = standings(
      single([
        [0.9, 0.8, 0.1, 0.5],
        [0.1, 0.1, 0.9, 0.4],
        [0.5, 0.9, 0.5, 0.5],
      ]),
      alone,
    );
    expect([a!.leadFraction, b!.leadFraction, c!.leadFraction]).toEqual([0.375, 0.25, 0.375]);
    expect([...a!.rankFractions]).toEqual([0.375, 0.375, 0.25]);
    expect([...a!.beatFractions]).toEqual([0.5, 0.75, 0.375]);
    expect(b!.beatFractions[0]).toBe(0.25);
  });

  it('a broken limit costs the draw, however good the score', () => {
    const passes = [tier.passes, tier.passes, tier.passes, tier.passes];
    const [a, b] = standings(
      single(
        [
          [1, 1, 1, 1],
          [0, 0, 0, 0],
        ],
        [[tier.fails, tier.notJudged, tier.passes, tier.passes], passes],
      ),
      alone,
    );
    expect(a).toMatchObject({ leadFraction: 0.5, passFraction: 0.5 });
    expect(b!.beatFractions[0]).toBe(0.5);
    // Where both break a limit the better score is before again.
    const both = standings(single([[1], [0]], [[tier.fails], [tier.fails]]), alone);
    expect(both[0]).toMatchObject({ leadFraction: 1, passFraction: 0 });
  });

  it('two normal scores: A beats B as often as the closed form says', () => {
    // Means 0.1 apart, each with deviation 0.1: P = Φ(0.1/(0.1·√2)) = Φ(0.70711) = 0.76025.
    const random = new Sfc32(1);
    const normal = () => Math.sqrt(2 * random.exponential()) * Math.cos(2 * Math.PI * random.next());
    const draws = (mean: number) => Array.from({ length: 20_000 }, () => mean + 0.1 * normal());
    const [a] = standings(single([draws(0.6), draws(0.5)]), alone);
    const chance = 4 * Math.sqrt((0.76 * 0.24) / 20_000);
    expect(Math.abs(a!.beatFractions[1]! - 0.76025)).toBeLessThan(chance);
    expect(a!.leadFraction).toBe(a!.beatFractions[1]);
  });

  it('weights count over their sum; equal scores by different ways are a tie', () => {
    expect([...normalisedWeights([3, 1])]).toEqual([0.75, 0.25]);
    expect([...normalisedWeights([0, 0])]).toEqual([0.5, 0.5]);
    // 0.1 + 0.2 is not 0.3 in floating point.
    const [a] = standings(
      fixed([
        [0.1, 0.2],
        [0.3, 0],
        [0.2, 0.1],
      ]),
      Float64Array.of(0.5, 0.5),
    );
    expect(a!.leadFraction).toBeCloseTo(1 / 3, 12);
  });
});
