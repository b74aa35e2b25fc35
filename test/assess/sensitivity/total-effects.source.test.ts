import { describe, expect, it } from 'vitest';
import { groupEffects, type PairedDraws } from '../../../src/assess/sensitivity/total-effects.js';
import { fillSobol, sobolShift } from '../../../src/simulate/sampling/sobol.js';

/** Inputs even between −π and π, both sets from one shifted Sobol' sequence. */
function between(seed: number, inputCount: number, groups: number[][], drawCount = 4096): PairedDraws {
  const columns = Array.from({ length: 2 * inputCount }, (_, dimension) => {
    const shares = new Float64Array(drawCount);
    fillSobol(dimension, sobolShift(seed, dimension), 0, shares);
    return shares.map((share) => Math.PI * (2 * share - 1));
  });
  return { a: columns.slice(0, inputCount), b: columns.slice(inputCount), groups };
}

const ishigami = (x: number[]) =>
  Math.sin(x[0]!) + 7 * Math.sin(x[1]!) ** 2 + 0.1 * x[2]! ** 4 * Math.sin(x[0]!);
/** Outputs of all draws from functions of one. */
const each =
  (...of: ((x: number[]) => number)[]) =>
  (inputs: readonly Float64Array[]) =>
    of.map((output) => inputs[0]!.map((_, draw) => output(inputs.map((column) => column[draw]!))));

describe('effects of the inputs of the Ishigami function, a = 7, b = 0.1', () => {
  // Ishigami & Homma 1990; Saltelli et al., Global Sensitivity Analysis: The Primer (from memory):
  // S 0.3139052, 0.4424111, 0; S_T 0.5575889, 0.4424111, 0.2436837.
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('come out within 0.02 from 4,096 base points, seed %i', (seed) => {
    const [found] = groupEffects(between(seed, 3, [[0], [1], [2]]), each(ishigami));
    [0.5575889, 0.4424111, 0.2436837].forEach((total, group) => {
      expect(Math.abs(found![group]!.totalFraction - total)).toBeLessThan(0.02);
    });
    [0.3139052, 0.4424111, 0].forEach((first, group) => {
      expect(Math.abs(found![group]!.firstFraction - first)).toBeLessThan(0.02);
    });
  });

  it('the first and third input as one group have what the second leaves: 0.5575889 (closed form)', () => {
    const [found] = groupEffects(between(4, 3, [[0, 2], [1]]), each(ishigami));
    expect(found![0]!.totalFraction).toBeCloseTo(0.5575889, 2);
    expect(found![0]!.firstFraction).toBeCloseTo(0.5575889, 2);
    expect(found![1]!.totalFraction).toBeCloseTo(0.4424111, 2);
  });

  it('even 256 base points tell which input matters', () => {
    const [found] = groupEffects(between(5, 3, [[0], [1], [2]], 256), each(ishigami));
    const totals = found!.map(({ totalFraction }) => totalFraction);
    expect(totals[0]! > totals[1]! && totals[1]! > totals[2]!).toBe(true);
  });
});

describe('other outputs', () => {
  it('of a sum, effects alone and together are equal: each input’s share of the variance (closed form)', () => {
    const weighted = each((x) => 1e6 + 3 * x[0]! + x[1]!);
    const [found] = groupEffects(between(2, 3, [[0], [1], [2]]), weighted);
    expect(found![0]!.totalFraction).toBeCloseTo(0.9, 2);
    expect(found![0]!.firstFraction).toBeCloseTo(0.9, 2);
    expect(found![1]!.totalFraction).toBeCloseTo(0.1, 2);
    expect(found![2]!.totalFraction).toBe(0);
  });

  it('of a product of centred inputs, neither does anything alone and both do everything (closed form)', () => {
    const product = each((x) => x[0]! * x[1]!);
    const [found] = groupEffects(between(2, 2, [[0], [1], [0, 1]]), product);
    for (const group of [0, 1]) {
      expect(found![group]!.firstFraction).toBeCloseTo(0, 1);
      expect(found![group]!.totalFraction).toBeCloseTo(1, 1);
    }
    expect(found![2]!.totalFraction).toBeCloseTo(1, 1);
  });

  it('several at once, one that never varies, and one that does not always exist', () => {
    const three = each(
      (x) => x[0]!,
      () => 5,
      (x) => (x[0]! < -1 ? Number.NaN : x[1]!),
    );
    const effects = groupEffects(between(1, 2, [[0], [1]]), three);
    expect(effects[0]![0]!.totalFraction).toBeCloseTo(1, 2);
    expect(effects[0]![0]!.usedCount).toBe(4096);
    expect(effects[1]).toEqual([
      { totalFraction: 0, firstFraction: 0, usedCount: 4096 },
      { totalFraction: 0, firstFraction: 0, usedCount: 4096 },
    ]);
    expect(effects[2]![1]!.totalFraction).toBeCloseTo(1, 1);
    expect(effects[2]![1]!.usedCount / 4096).toBeCloseTo(((Math.PI + 1) / (2 * Math.PI)) ** 2, 1);
  });
});
