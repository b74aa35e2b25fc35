import { describe, expect, it } from 'vitest';
import type { Spread } from '../../../src/quantity/spread.js';
import {
  DrawPlan,
  generatorName,
  type PlannedInput,
  relativeWidthRatio,
} from '../../../src/simulate/sampling/draw-plan.js';
import { correlation, meanOf } from './moments.js';

const input = (
  path: string,
  spread: Spread | null,
  nominal = 1,
  more: Partial<PlannedInput> = {},
): PlannedInput => ({
  path,
  field: path,
  owner: null,
  shared: true,
  bounds: null,
  nominal,
  spread,
  ...more,
});
const percent = (path: string, share: number, nominal = 1) =>
  input(path, { shape: 'normal', halfWidth: share * nominal }, nominal);
const many = (count: number) =>
  Array.from({ length: count }, (_, i) =>
    percent(`input${String(i).padStart(2, '0')}`, 0.02 + 0.01 * (i % 20)),
  );

describe('which inputs get the even sequence', () => {
  it('the sixteen with the widest relative spread, equal ones by path', () => {
    const inputs = [...many(20), percent('also05', 0.21)];
    const { sobolPaths } = new DrawPlan(inputs, 1, 64).scheme;
    expect(sobolPaths).toHaveLength(16);
    expect(sobolPaths.slice(0, 3)).toEqual(['also05', 'input19', 'input18']);
    expect(sobolPaths).not.toContain('input04');
    expect(new DrawPlan(many(20), 1, 64, { dimensionCount: 8 }).scheme.sobolPaths).toHaveLength(8);
  });

  it('exact inputs get none and stay at nominal', () => {
    const plan = new DrawPlan(
      [input('a', null, 7), input('b', { shape: 'exact' }, 8), percent('c', 0.1)],
      1,
      16,
    );
    expect(plan.scheme).toEqual({ generator: generatorName, seed: 1, sobolPaths: ['c'] });
    expect([...plan.values(0)]).toEqual(Array(16).fill(7));
    expect([...plan.values(1)]).toEqual(Array(16).fill(8));
    expect(plan.sampledInputs().map(({ path }) => path)).toEqual(['c']);
  });

  it('width counts against the size of the figure, so that grams and degrees compare', () => {
    expect(relativeWidthRatio(percent('a', 0.1, 5))).toBeCloseTo(
      relativeWidthRatio(percent('b', 0.1, 500)),
      12,
    );
    // Closed form: an even range from 2 to 4 has 1.6 between its 10 and 90 % points.
    expect(relativeWidthRatio(input('a', { shape: 'uniform', low: 2, high: 4 }, 3))).toBeCloseTo(1.6 / 3, 12);
    expect(relativeWidthRatio(input('a', { shape: 'uniform', low: -1, high: 1 }, 0))).toBeCloseTo(2, 12);
    const factors: Spread = { shape: 'uniform', low: 0.9, high: 1.1 };
    expect(relativeWidthRatio(input('a', factors, -40, { ofFactors: true }))).toBeCloseTo(0.16, 12);
  });
});

describe('draws', () => {
  it('of any range are those of the whole', () => {
    const plan = new DrawPlan(many(20), 3, 256);
    for (const index of [0, 19]) {
      const whole = plan.values(index);
      expect([...plan.values(index, 0, 100), ...plan.values(index, 100, 256)]).toEqual([...whole]);
      expect(plan.uniforms(index, 17, 18)[0]).toBe(plan.uniforms(index)[17]);
    }
  });

  it('are stratified: one in each of as many equal parts as there are draws', () => {
    const plan = new DrawPlan(many(20), 3, 512);
    for (const index of plan.inputs.keys()) {
      expect(new Set([...plan.uniforms(index)].map((share) => Math.floor(share * 512))).size).toBe(512);
    }
  });

  it('of different inputs are uncorrelated', () => {
    const plan = new DrawPlan(many(24), 3, 2048);
    const columns = plan.inputs.map((_, index) => plan.uniforms(index));
    for (const a of columns.keys()) {
      for (let b = 0; b < a; b++) {
        expect(Math.abs(correlation(columns[a]!, columns[b]!))).toBeLessThan(4 / Math.sqrt(2048));
      }
    }
  });

  it('in hypercube columns stay as they are when an input is added', () => {
    const before = new DrawPlan(many(18), 3, 128, { dimensionCount: 8 });
    const after = new DrawPlan([percent('added', 0.5), ...many(18)], 3, 128, { dimensionCount: 8 });
    expect(after.uniforms(1)).toEqual(before.uniforms(0));
  });

  it('move with the seed, and are the same for the same seed', () => {
    const values = (seed: number, index: number) => new DrawPlan(many(20), seed, 64).values(index);
    for (const index of [0, 19]) {
      expect(values(4, index)).toEqual(values(4, index));
      expect(values(4, index)).not.toEqual(values(5, index));
    }
  });

  it('of two plans on different parts of the sequence are independent, input by input', () => {
    const a = new DrawPlan(many(20), 3, 2048, { dimensionCount: 8 });
    const b = new DrawPlan(many(20), 3, 2048, { firstDimensionIndex: 8, dimensionCount: 8, copy: 'b ' });
    for (const index of a.inputs.keys()) {
      expect(Math.abs(correlation(a.uniforms(index), b.uniforms(index)))).toBeLessThan(4 / Math.sqrt(2048));
    }
  });

  it('follow the spread: factors on the figure, bounds, shapes', () => {
    const flattering: Spread = { shape: 'triangular', low: 0.6, mode: 0.85, high: 1.05 };
    const plan = new DrawPlan(
      [
        input('effort', flattering, 2, { ofFactors: true }),
        percent('mass', 0.05, 3),
        input('efficiency', { shape: 'normal', halfWidth: 0.3 }, 0.9, { bounds: { low: 0, high: 1 } }),
      ],
      1,
      2048,
    );
    const [effort, mass, efficiency] = plan.sampledInputs().map(({ values }) => values) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    expect(meanOf(effort)).toBeCloseTo((2 * 2.5) / 3, 3);
    expect(meanOf(mass)).toBeCloseTo(3, 3);
    expect(Math.max(...efficiency)).toBeLessThanOrEqual(1);
  });
});
