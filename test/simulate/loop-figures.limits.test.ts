import { describe, expect, it } from 'vitest';
import { meanCurrentA, tenSecondMeanA, worstWindowMean } from '../../src/simulate/loop-figures.js';
import { samplesOf } from './segments.js';

const pulses = samplesOf([
  { durationS: 4, currentA: 5 },
  { durationS: 6, currentA: 1 },
  { durationS: 3, currentA: 5 },
  { durationS: 12, currentA: 0 },
]);

const nothing = samplesOf([]);

describe('means over the repeated loop', () => {
  it('give the mean of a plain pulse train', () => {
    expect(meanCurrentA(pulses, 7.4)).toBeCloseTo((4 * 5 + 6 * 1 + 3 * 5) / 25, 12);
  });

  it('find the ten seconds with the largest mean, here the last ten of the pulses', () => {
    // 1 s of the first pulse, 6 s at 1 A, 3 s at 5 A; or 4 + 6 from the start: 26/10 is the larger.
    expect(tenSecondMeanA(nothing, pulses, 7.4)).toBeCloseTo((4 * 5 + 6 * 1) / 10, 12);
  });

  it('find a window that runs over the end of the loop', () => {
    const wrap = samplesOf([
      { durationS: 5, currentA: 4 },
      { durationS: 20, currentA: 0 },
      { durationS: 5, currentA: 4 },
    ]);
    expect(tenSecondMeanA(nothing, wrap, 7.4)).toBeCloseTo(4, 12);
  });

  it('count what is played once before it, and the loop after it, but never the lead-in after the loop', () => {
    const leadIn = samplesOf([
      { durationS: 4, currentA: 8 },
      { durationS: 20, currentA: 0 },
      { durationS: 3, currentA: 6 },
    ]);
    // 3 s at 6 A, 4 s at 5 A, 3 s at 1 A: over the seam between the two.
    expect(tenSecondMeanA(leadIn, pulses, 7.4)).toBeCloseTo((3 * 6 + 4 * 5 + 3 * 1) / 10, 12);
    const late = samplesOf([
      { durationS: 40, currentA: 0 },
      { durationS: 8, currentA: 4 },
    ]);
    const early = samplesOf([
      { durationS: 8, currentA: 4 },
      { durationS: 40, currentA: 0 },
    ]);
    expect(tenSecondMeanA(early, late, 7.4)).toBeCloseTo(3.2, 12);
  });

  it('over a window longer than the loop count whole loops and the worst remainder', () => {
    const on = (k: number) => (k === 0 ? 1 : 0);
    const half = samplesOf([{ durationS: 10 }, { durationS: 10 }]);
    expect(worstWindowMean(half, 50, on)).toBeCloseTo(30 / 50, 12);
    expect(worstWindowMean(half, 10, on)).toBeCloseTo(1, 12);
    expect(worstWindowMean(half, 20, on)).toBeCloseTo(0.5, 12);
  });
});
