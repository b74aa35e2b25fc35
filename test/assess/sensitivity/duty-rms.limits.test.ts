import { describe, expect, it } from 'vitest';
import { dutyRmsEffort } from '../../../src/assess/sensitivity/duty-rms.js';

describe('root mean square of a duty cycle', () => {
  it('2 N·m for 1 s, 0.6 N·m for 8 s and rest for 11 s heat like a steady 0.5865151 N·m (closed form)', () => {
    expect(dutyRmsEffort([2, 0.6, 0], [1, 8, 11])).toBeCloseTo(0.5865151, 7);
  });

  it('does not ask for the sign, and a cycle without duration has none', () => {
    expect(dutyRmsEffort([-2, 2], [1, 3])).toBe(2);
    expect(dutyRmsEffort([], [])).toBe(0);
    expect(dutyRmsEffort([5], [0])).toBe(0);
  });
});
