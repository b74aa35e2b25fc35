import { describe, expect, it } from 'vitest';
import { type SwungInput, swings } from '../../../src/assess/sensitivity/swings.js';
import type { Spread } from '../../../src/quantity/spread.js';

const even = (low: number, high: number): Spread => ({ shape: 'uniform', low, high });
const input = (path: string, spread: Spread | null, nominal: number): SwungInput => {
  return { path, spread, nominal, bounds: null };
};

describe('swings', () => {
  it('are the output at the 10 and 90 % points, the largest first, equal ones by path', () => {
    const inputs = [
      input('b', even(1, 2), 1.5),
      input('exact', null, 4),
      input('a', even(1, 2), 1.5),
      input('wide', even(-10, 10), 0),
    ];
    const found = swings(inputs, (_, value) => 5 * value);
    expect(found.map(({ path }) => path)).toEqual(['wide', 'a', 'b']);
    expect(found[0]).toEqual({ path: 'wide', low: -8, high: 8, outputs: { low: -40, high: 40 }, swing: 80 });
  });

  it('heed the bounds of a normal spread', () => {
    const efficiency: SwungInput = {
      path: 'efficiency',
      spread: { shape: 'normal', halfWidth: 1.96 },
      nominal: 0.9,
      bounds: { low: 0, high: 1 },
    };
    const [found] = swings([efficiency], (_, value) => value);
    expect(found!.low).toBeGreaterThan(0);
    expect(found!.high).toBeLessThan(1);
  });

  it('an output that exists at one end only swings most of all, one that exists at neither not at all', () => {
    const inputs = ['a', 'b', 'c', 'd'].map((path) => input(path, even(1, 2), 1.5));
    const outputs = [
      (value: number) => value,
      (value: number) => (value < 1.5 ? Number.NaN : 1),
      () => Number.NaN,
      (value: number) => (value > 1.5 ? Number.POSITIVE_INFINITY : 1),
    ];
    const found = swings(inputs, (index, value) => outputs[index]!(value));
    expect(found.map(({ path, swing }) => [path, swing])).toEqual([
      ['b', Number.POSITIVE_INFINITY],
      ['d', Number.POSITIVE_INFINITY],
      ['a', expect.closeTo(0.8, 12)],
      ['c', 0],
    ]);
  });
});
