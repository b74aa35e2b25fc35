import { describe, expect, it } from 'vitest';
import { acceptability } from '../../../src/assess/choosing/acceptability.js';
import { tier } from '../../../src/assess/choosing/drawn-worths.js';
import { anyWeights, weightsInOrder } from '../../../src/assess/choosing/weight-sampler.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';
import { fixed, single } from './drawn.js';

const three = [
  [1, 0],
  [0, 1],
  [0.6, 0.6],
];
const rankings = 100_000;
/** Four standard errors of a share: √(p(1 − p)/n). */
const chance = (share: number) => 4 * Math.sqrt((share * (1 - share)) / rankings) + 1e-12;

describe('A worth (1, 0), B (0, 1) and C (0.6, 0.6), weights unknown (closed form)', () => {
  // A leads where w > 0.6, B where w < 0.4, C between; A is before B where w > 0.5.
  const found = acceptability(fixed(three, 1000), anyWeights(new Sfc32(1)), rankings / 1000);

  it.each([
    ['A', 0, [0.4, 0.1, 0.5]],
    ['B', 1, [0.4, 0.1, 0.5]],
    ['C', 2, [0.2, 0.8, 0]],
  ])('%s stands at each rank as often as computed', (_, candidate, shares) => {
    shares.forEach((share, rank) => {
      expect(Math.abs(found[candidate]!.rankFractions[rank]! - share)).toBeLessThan(chance(share));
    });
  });

  it('A leads under weights that centre on 0.8, B on 0.2, C on 0.5', () => {
    // The first weight is even over the part that leads: standard error width/√12/√(leading rankings).
    [
      [0, 0.8, 0.4],
      [1, 0.2, 0.4],
      [2, 0.5, 0.2],
    ].forEach(([candidate, centre, width]) => {
      const weights = found[candidate!]!.centralWeightScores!;
      expect(Math.abs(weights[0]! - centre!)).toBeLessThan((4 * width!) / Math.sqrt(12 * width! * rankings));
      expect(weights[0]! + weights[1]!).toBeCloseTo(1, 12);
    });
    expect(found.map(({ confidenceFraction }) => confidenceFraction)).toEqual([1, 1, 1]);
  });

  it('B never leads when the first criterion must count more; A then leads in 0.8 and C in 0.2', () => {
    const ordered = acceptability(fixed(three), weightsInOrder(new Sfc32(2), [2, 1]), rankings);
    const leads = ordered.map(({ rankFractions }) => rankFractions[0]!);
    expect(leads[1]).toBe(0);
    expect(ordered[1]!.centralWeightScores).toBeNull();
    expect(ordered[1]!.confidenceFraction).toBeNull();
    expect(Math.abs(leads[0]! - 0.8)).toBeLessThan(chance(0.8));
    expect(Math.abs(leads[2]! - 0.2)).toBeLessThan(chance(0.2));
  });
});

describe('limits, ties and luck', () => {
  it('a candidate that breaks a limit ranks after those that pass, one not judged between', () => {
    const found = acceptability(
      fixed([[1], [0.1], [0.5], [0.2]], 10, [tier.fails, tier.passes, tier.notJudged, tier.passes]),
      anyWeights(new Sfc32(3)),
      3,
    );
    expect(found.map(({ rankFractions }) => rankFractions.indexOf(1) + 1)).toEqual([4, 2, 3, 1]);
  });

  it('twins share their ranks, and shares of every rank and candidate add up to 1', () => {
    const found = acceptability(fixed([[0.3, 0.3], [0.3, 0.3], ...three], 50), anyWeights(new Sfc32(4)), 100);
    expect(found[0]!.rankFractions).toEqual(found[1]!.rankFractions);
    for (const place of [0, 1, 2, 3, 4]) {
      const over = found.reduce((sum, { rankFractions }) => sum + rankFractions[place]!, 0);
      expect(over).toBeCloseTo(1, 12);
      expect(found[place]!.rankFractions.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    }
    const alone = acceptability(fixed([[0.4], [0.4]], 5), anyWeights(new Sfc32(4)), 2);
    expect([...alone[0]!.rankFractions]).toEqual([0.5, 0.5]);
    expect(alone[0]!.confidenceFraction).toBe(0.5);
  });

  it('confidence is the share of draws in which the central weights still lead', () => {
    const found = acceptability(
      single([
        [0.9, 0.9, 0.9, 0.1],
        [0.5, 0.5, 0.5, 0.5],
      ]),
      anyWeights(new Sfc32(5)),
      4,
    );
    expect(found.map(({ confidenceFraction }) => confidenceFraction)).toEqual([0.75, 0.25]);
  });
});
