import { describe, expect, it } from 'vitest';
import { levelAtOneMetreDb } from '../../src/physics/sound.js';

/*
 * ISO 9613-2:1996, 7.1, from memory: divergence from a point source takes 20·lg(d / 1 m) + 11 dB off its sound power
 * level. What a reading at d differs from one at 1 m is the first term: 20·lg 2 = 6.0206 dB for a doubling.
 */
describe('sound level of a small source in the open', () => {
  it.each([
    [60, 1, 60],
    [56, 2, 62.0206],
    [52, 0.5, 45.9794],
    [40, 10, 60],
    [60, 0.3, 49.5424],
  ])('read as %d dB at %d m is %d dB at 1 m', (levelDb, distanceM, atOneMetreDb) => {
    expect(levelAtOneMetreDb(levelDb, distanceM)).toBeCloseTo(atOneMetreDb, 4);
  });
});
