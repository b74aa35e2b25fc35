import { describe, expect, it } from 'vitest';
import { worthsOfKnowing } from '../../../src/assess/sensitivity/worth-of-knowing.js';
import { normalShare } from '../../../src/quantity/normal.js';
import type { Spread } from '../../../src/quantity/spread.js';
import { DrawPlan, type PlannedInput } from '../../../src/simulate/sampling/draw-plan.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';

const seeds = Array.from({ length: 20 }, (_, i) => i + 1);
const input = (path: string, spread: Spread, nominal: number): PlannedInput => {
  return { path, field: path, owner: null, shared: true, bounds: null, spread, nominal };
};
const normal = (path: string, mean: number, sigma: number) =>
  input(path, { shape: 'normal', halfWidth: 1.96 * sigma }, mean);
const nothing = (count: number) => new Float64Array(count);

/**
 * Value of knowing x, normal, when A is worth 0 and B is worth x: with knowledge max(0, x) is had, without it
 * max(0, μ). E max(0, x) = μ·Φ(μ/σ) + σ·φ(μ/σ).
 */
function closedForm(mean: number, sigma: number): number {
  const z = mean / sigma;
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return mean * normalShare(z) + sigma * density - Math.max(0, mean);
}

describe('two candidates, worth 0 and worth x (closed form)', () => {
  it.each([-0.05, -0.03, 0, 0.02, 0.05])(
    'x about %f with deviation 0.1: within 5 %% for every seed',
    (mean) => {
      for (const seed of seeds) {
        const x = new DrawPlan([normal('x', mean, 0.1)], seed, 2048).values(0);
        const [found] = worthsOfKnowing([x], [nothing(2048), x], new Sfc32(seed));
        const expected = closedForm(mean, 0.1);
        expect(Math.abs(found!.gainScore - expected)).toBeLessThan(0.05 * expected);
      }
    },
  );

  it('x and as much that cannot be known: knowing x is worth the same, within 5 % over the seeds', () => {
    const gains = seeds.map((seed) => {
      const plan = new DrawPlan([normal('x', 0.02, 0.1), normal('rest', 0, 0.1)], seed, 2048);
      const [x, rest] = [plan.values(0), plan.values(1)];
      const [known] = worthsOfKnowing(
        [x],
        [nothing(2048), x.map((own, i) => own + rest[i]!)],
        new Sfc32(seed),
      );
      return known!.gainScore;
    });
    const mean = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
    expect(Math.abs(mean / closedForm(0.02, 0.1) - 1)).toBeLessThan(0.05);
  });

  it('an input that decides nothing is worth nothing, however much it moves the scores', () => {
    const x = new DrawPlan([normal('x', 0, 0.1)], 1, 2048).values(0);
    const [found] = worthsOfKnowing([x], [x, x.map((own) => own + 0.2)], new Sfc32(1));
    expect(found!.gainScore).toBeLessThan(1e-12);
  });
});

describe('an input that means nothing', () => {
  it.each([
    ['two tied candidates', 0],
    ['one a little ahead', 0.03],
  ])('is worth less than 0.002 in at least 19 of 20 seeds: %s', (_, lead) => {
    const below = seeds.filter((seed) => {
      const random = new Sfc32(seed, 'scores');
      const gauss = () => Math.sqrt(2 * random.exponential()) * Math.cos(2 * Math.PI * random.next());
      const scores = [0.5, 0.5 + lead].map((mean) =>
        Float64Array.from({ length: 2048 }, () => mean + 0.07 * gauss()),
      );
      const noise = Float64Array.from({ length: 2048 }, () => random.next());
      return worthsOfKnowing([noise], scores, new Sfc32(seed))[0]!.gainScore < 0.002;
    });
    expect(below.length).toBeGreaterThanOrEqual(19);
  });

  it('seems to be worth something before chance is taken off', () => {
    const random = new Sfc32(3);
    const [a, b, noise] = [0, 1, 2].map(() => Float64Array.from({ length: 2048 }, () => random.next()));
    const [found] = worthsOfKnowing([noise!], [a!, b!], random);
    expect(found!.rawScore).toBeGreaterThan(0.002);
    expect(found!.chanceScore).toBeGreaterThan(0.002);
  });

  it('that never varies, or too few draws, or one candidate alone, give 0', () => {
    const x = Float64Array.from({ length: 100 }, (_, i) => i / 100);
    const zero = { gainScore: 0, rawScore: 0, chanceScore: 0, changedProbability: 0 };
    expect(worthsOfKnowing([nothing(100)], [x, nothing(100)], new Sfc32(1))).toEqual([zero]);
    expect(worthsOfKnowing([x.subarray(0, 9)], [x.subarray(0, 9), nothing(9)], new Sfc32(1))).toEqual([zero]);
    expect(worthsOfKnowing([x], [x], new Sfc32(1))).toEqual([zero]);
    expect(worthsOfKnowing([], [], new Sfc32(1))).toEqual([]);
  });
});

describe('several inputs', () => {
  it('are judged by the same chance, so that their order does not matter', () => {
    const plan = new DrawPlan([normal('x', 0, 0.1), normal('y', 0, 0.05)], 2, 2048);
    const [x, y] = [plan.values(0), plan.values(1)];
    const scores = [nothing(2048), x.map((own, i) => own + y[i]!)];
    const [ofX, ofY] = worthsOfKnowing([x, y], scores, new Sfc32(2));
    const [alsoY, alsoX] = worthsOfKnowing([y, x], scores, new Sfc32(2));
    expect([ofX, ofY]).toEqual([alsoX, alsoY]);
    expect(ofX!.gainScore).toBeGreaterThan(ofY!.gainScore);
  });
});

describe('how often knowing would change the choice', () => {
  const count = 1000;
  const x = Float64Array.from({ length: count }, (_, i) => i / count);
  const [known] = worthsOfKnowing([x], [nothing(count).fill(0.3), x.slice()], new Sfc32(1, 'permutations'));

  it('is the share of draws in which the other one is better: below 0.3 where x against 0.3 is chosen', () => {
    expect(known!.changedProbability).toBeCloseTo(0.3, 12);
  });

  it('counts from the one that is chosen, also where another does better on average', () => {
    const scores = [nothing(count).fill(0.3), x.slice()];
    const [kept] = worthsOfKnowing([x], scores, new Sfc32(1, 'permutations'), 0);
    expect(kept!.changedProbability).toBeCloseTo(0.7, 12);
  });

  it('is 0 for what tells nothing', () => {
    const constant = nothing(count).fill(1);
    const told = worthsOfKnowing([constant], [nothing(count), x.slice()], new Sfc32(1, 'permutations'));
    expect(told[0]).toMatchObject({ gainScore: 0, changedProbability: 0 });
    const better = worthsOfKnowing([x], [nothing(count), x.slice()], new Sfc32(1, 'permutations'));
    expect(better[0]!.changedProbability).toBe(0);
  });
});
