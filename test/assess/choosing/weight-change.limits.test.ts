import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalisedWeights } from '../../../src/assess/choosing/drawn-worths.js';
import { nearestLevelWeights, smallestWeightChange } from '../../../src/assess/choosing/weight-change.js';
import { nonDominatedIds } from '../../../src/assess/ranking.js';
import { criterion } from '../hand-made.js';

const rows = (...worths: number[][]) => worths.map((own) => Float64Array.from(own));
const score = (weights: Float64Array, worths: Float64Array) =>
  weights.reduce((sum, weight, k) => sum + weight * worths[k]!, 0);
const distance = (a: Float64Array, b: Float64Array) => Math.hypot(...a.map((weight, k) => weight - b[k]!));

describe('the smallest change of weights that changes who leads', () => {
  it('A (1, 0), B (0, 1), C (0.6, 0.6) at weights 0.9 and 0.1: C draws level at 0.6 (closed form)', () => {
    const found = smallestWeightChange(
      rows([1, 0], [0, 1], [0.6, 0.6]),
      [0, 0, 0],
      0,
      Float64Array.of(0.9, 0.1),
    )!;
    expect(found.challengerIndex).toBe(2);
    expect([...found.weightScores]).toEqual([expect.closeTo(0.6, 12), expect.closeTo(0.4, 12)]);
    expect(found.changeScore).toBeCloseTo(0.3 * Math.SQRT2, 12);
  });

  it('three criteria, no weight near 0: straight onto the level plane (closed form)', () => {
    // Gains (−1, 1, 0) about equal: at (0.5, 0.3, 0.2) the nearest level weights are (0.4, 0.4, 0.2).
    const found = nearestLevelWeights(Float64Array.of(0.5, 0.3, 0.2), Float64Array.of(-1, 1, 0))!;
    expect([...found]).toEqual([0.4, 0.4, 0.2].map((weight) => expect.closeTo(weight, 12)));
  });

  it('stops a weight at 0 and goes on along the edge (closed form)', () => {
    // Gains (−1, 1/4, 1/4) from (0.8, 0.2, 0): level needs the first at 0.2; (0.2, 0.5, 0.3) is nearest.
    const inside = nearestLevelWeights(Float64Array.of(0.8, 0.2, 0), Float64Array.of(-1, 0.25, 0.25))!;
    expect([...inside]).toEqual([0.2, 0.5, 0.3].map((weight) => expect.closeTo(weight, 12)));
    // Gains (−1, 1/9, −1) leave only the second to grow: level needs 0.9; the third stops at 0 on the way.
    const edge = nearestLevelWeights(Float64Array.of(0.7, 0.28, 0.02), Float64Array.of(-1, 1 / 9, -1))!;
    expect([...edge]).toEqual([0.1, 0.9, 0].map((weight) => expect.closeTo(weight, 12)));
  });

  it('is nothing where candidates are level already, and does not exist for one that is never better', () => {
    const own = normalisedWeights([1, 1]);
    expect(smallestWeightChange(rows([0.5, 0.5], [0.2, 0.8]), [0, 0], 0, own)).toMatchObject({
      changeScore: 0,
    });
    expect(smallestWeightChange(rows([0.5, 0.5], [0.4, 0.5]), [0, 0], 0, own)).toBeNull();
    expect(smallestWeightChange(rows([0.5, 0.5]), [0], 0, own)).toBeNull();
  });

  it('a candidate that breaks a limit never comes to lead', () => {
    const worths = rows([0.5, 0.5], [0.4, 1], [0, 0.9]);
    const own = Float64Array.of(0.9, 0.1);
    expect(smallestWeightChange(worths, [0, 0, 0], 0, own)!.challengerIndex).toBe(1);
    expect(smallestWeightChange(worths, [0, 2, 0], 0, own)!.challengerIndex).toBe(2);
    expect(smallestWeightChange(worths, [0, 2, 2], 0, own)).toBeNull();
    // When all break one, they are compared with each other.
    expect(smallestWeightChange(worths, [2, 2, 2], 0, own)!.challengerIndex).toBe(1);
  });
});

describe('of any candidates and weights', () => {
  const part = fc.double({ min: 0, max: 1, noNaN: true });
  const problem = fc.integer({ min: 2, max: 7 }).chain((k) =>
    fc.record({
      worths: fc.array(fc.array(part, { minLength: k, maxLength: k }), { minLength: 2, maxLength: 5 }),
      own: fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: k, maxLength: k }),
      others: fc.array(
        fc.array(fc.double({ min: 1e-6, max: 1, noNaN: true }), { minLength: k, maxLength: k }),
        {
          minLength: 30,
          maxLength: 30,
        },
      ),
    }),
  );

  it('the challenger is level with the leader and behind nobody, and no other weights do it sooner', () => {
    fc.assert(
      fc.property(problem, ({ worths, own, others }) => {
        const all = rows(...worths);
        const weights = normalisedWeights(own);
        const scores = all.map((candidate) => score(weights, candidate));
        const leader = scores.indexOf(Math.max(...scores));
        const found = smallestWeightChange(
          all,
          all.map(() => 0),
          leader,
          weights,
        );
        const leads = (at: Float64Array) =>
          all.every((candidate) => score(at, candidate) <= score(at, all[leader]!) + 1e-10);
        if (found !== null) {
          const level = all.map((candidate) => score(found.weightScores, candidate));
          expect(level[found.challengerIndex]).toBeCloseTo(level[leader]!, 9);
          expect(Math.max(...level) - level[leader]!).toBeLessThan(1e-9);
          expect(Math.min(...found.weightScores)).toBeGreaterThanOrEqual(0);
          expect(found.weightScores.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9);
        }
        const corners = weights.map((_, k) => k);
        const tried = [
          ...others.map((entry) => normalisedWeights(entry.map((weight) => weight ** 4))),
          ...Array.from(corners, (k) => weights.map((_, at) => (at === k ? 1 : 0))),
        ];
        for (const at of tried) {
          if (leads(at)) continue;
          // The way to weights with another leader passes the change; halving finds where.
          let [near, far] = [0, 1];
          for (let step = 0; step < 50; step++) {
            const middle = (near + far) / 2;
            if (leads(weights.map((weight, k) => weight + middle * (at[k]! - weight)))) near = middle;
            else far = middle;
          }
          expect(found).not.toBeNull();
          expect(far * distance(at, weights)).toBeGreaterThanOrEqual(found!.changeScore - 1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('exists only for leaders with a non-dominated rival', () => {
    fc.assert(
      fc.property(problem, ({ worths: fine, own }) => {
        // In steps of a 64th, so that no difference is smaller than rounding.
        const worths = fine.map((candidate) => candidate.map((worth) => Math.round(worth * 64) / 64));
        const all = rows(...worths);
        const weights = normalisedWeights(own);
        const scores = all.map((candidate) => score(weights, candidate));
        const leader = scores.indexOf(Math.max(...scores));
        const found = smallestWeightChange(
          all,
          all.map(() => 0),
          leader,
          weights,
        );
        const names = [
          'runtime',
          'cost',
          'hold_power',
          'body_mass',
          'push_force',
          'fits',
          'torque_margin',
        ] as const;
        const criteria = own.map((weight, k) => criterion(names[k]!, weight, [0, 1]));
        const ids = nonDominatedIds(
          worths.map((candidate, index) => ({
            id: String(index),
            passes: true,
            criteria: candidate.map((worthScore, k) => ({
              criterion: names[k]!,
              value: worthScore,
              worthScore,
              weightScore: own[k]!,
            })),
          })),
          criteria,
        );
        if (ids.size === 1) expect(found).toBeNull();
        if (found !== null) expect(ids.size).toBeGreaterThan(1);
      }),
    );
  });
});
