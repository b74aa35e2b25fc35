import { describe, expect, it } from 'vitest';
import { bandOf, shareOf } from '../../../src/assess/certainty/bands.js';
import { inDraws, surenessWord } from '../../../src/assess/certainty/sureness.js';

describe('a band', () => {
  it('of 0 to 100 in whole steps is 10, 50, 90', () => {
    const column = Float64Array.from({ length: 101 }, (_, i) => 100 - i);
    expect(bandOf(column)).toEqual({ p10: 10, median: 50, p90: 90, occursFraction: 1 });
  });

  it('counts only draws in which the outcome occurs, and says in how many', () => {
    expect(bandOf(Float64Array.of(Number.NaN, 4, Number.NaN, 4))).toEqual({
      p10: 4,
      median: 4,
      p90: 4,
      occursFraction: 0.5,
    });
    expect(bandOf(Float64Array.of(Number.NaN))).toBeNull();
  });

  it('has an endless end where draws are endless, and never a number that is none', () => {
    const column = Float64Array.of(1, 2, 3, 4, Infinity, Infinity, Infinity, Infinity);
    const band = bandOf(column)!;
    expect([band.median, band.p90]).toEqual([Infinity, Infinity]);
    expect(bandOf(Float64Array.of(Infinity, Infinity))!.median).toBe(Infinity);
  });

  it('of a share counts draws', () => {
    expect(shareOf(4, (draw) => draw < 3)).toBe(0.75);
    expect(shareOf(0, () => true)).toBe(0);
  });
});

describe('words for a probability', () => {
  it.each([
    [1, 'clear'],
    [0.9, 'clear'],
    [0.899, 'likely'],
    [0.75, 'likely'],
    [0.749, 'open'],
    [0, 'open'],
    [null, 'open'],
  ] as const)('%s is %s', (probability, word) => {
    expect(surenessWord(probability)).toBe(word);
  });

  it.each([
    [0, '0 %'],
    [0.001, 'under 1 %'],
    [0.424, '42 %'],
    [0.7497, 'just under 75 %'],
    [0.75, '75 %'],
    [0.999, 'over 99 %'],
    [1, '100 %'],
  ])('%s is written %s', (probability, text) => {
    expect(inDraws(probability)).toBe(text);
  });
});
