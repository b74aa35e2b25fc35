import { describe, expect, it } from 'vitest';
import { wormBackwardEfficiency, wormForwardEfficiency } from '../../src/physics/worm.js';
import { degreeRad, significant } from './units.js';

const pressureRad = 20 * degreeRad;

describe('a worm (closed form)', () => {
  it('of 4° lead just locks at a friction of 0.0657097', () => {
    // cos 20° × tan 4°, worked out by hand.
    expect(wormBackwardEfficiency(4 * degreeRad, 0.0657097, pressureRad)).toBeCloseTo(0, 5);
    expect(wormBackwardEfficiency(4 * degreeRad, 0.065, pressureRad)).toBeGreaterThan(0);
    expect(wormBackwardEfficiency(4 * degreeRad, 0.066, pressureRad)).toBeLessThan(0);
  });

  it('of 10° lead and friction 0.08 passes 0.664267 forward and 0.509531 back', () => {
    expect(significant(wormForwardEfficiency(10 * degreeRad, 0.08, pressureRad), 6)).toBe(0.664267);
    expect(significant(wormBackwardEfficiency(10 * degreeRad, 0.08, pressureRad), 6)).toBe(0.509531);
  });

  it('that just locks drives forward with less than half of its power', () => {
    for (const leadDeg of [1, 3, 5, 10, 20]) {
      const friction = Math.cos(pressureRad) * Math.tan(leadDeg * degreeRad);
      expect(wormBackwardEfficiency(leadDeg * degreeRad, friction, pressureRad)).toBeCloseTo(0, 12);
      expect(wormForwardEfficiency(leadDeg * degreeRad, friction, pressureRad)).toBeLessThan(0.5);
    }
  });

  it('without friction loses nothing either way', () => {
    expect(wormForwardEfficiency(7 * degreeRad, 0, pressureRad)).toBe(1);
    expect(wormBackwardEfficiency(7 * degreeRad, 0, pressureRad)).toBe(1);
  });

  it('of 45° lead is the same both ways: worm and wheel change places', () => {
    expect(wormForwardEfficiency(45 * degreeRad, 0.1, pressureRad)).toBeCloseTo(
      wormBackwardEfficiency(45 * degreeRad, 0.1, pressureRad),
      12,
    );
  });
});
