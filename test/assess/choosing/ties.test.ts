import { describe, expect, it } from 'vitest';
import { isTie } from '../../../src/assess/choosing/ties.js';

describe('ties', () => {
  it.each([
    [0.34, false],
    [0.35, true],
    [0.5, true],
    [0.65, true],
    [0.66, false],
  ])('a candidate that beats another in %f of the draws is tied with it: %s', (share, tied) => {
    expect(isTie(share)).toBe(tied);
  });
});
