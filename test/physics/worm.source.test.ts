import { describe, expect, it } from 'vitest';
import { wormBackwardEfficiency, wormForwardEfficiency } from '../../src/physics/worm.js';
import { degreeRad, significant } from './units.js';

describe('worm gearsets (Budynas & Nisbett, Shigley’s Mechanical Engineering Design, ch. 13, efficiency table for friction 0.05, from memory)', () => {
  // lead angle in degrees, efficiency in per cent as computed for friction 0.05 and pressure angle 14.5°
  const table = [
    [1, 25.24],
    [2.5, 45.71],
    [7.5, 71.34],
    [10, 76.64],
    [15, 82.68],
  ] as const;

  it.each(table)('with a lead angle of %s° reach %s %%', (leadDeg, percent) => {
    const efficiency = wormForwardEfficiency(leadDeg * degreeRad, 0.05, 14.5 * degreeRad);
    expect(significant(100 * efficiency, 4)).toBe(percent);
  });
});

describe('lead angles that lock (Mott, Machine Elements in Mechanical Design, worm gearing: not above about 5°)', () => {
  it('lock at 5° with the friction of a well-run pair at rest, and not at 10°', () => {
    // Static friction of bronze on steel about 0.1: common practice.
    expect(wormBackwardEfficiency(5 * degreeRad, 0.1, 20 * degreeRad)).toBeLessThan(0);
    expect(wormBackwardEfficiency(10 * degreeRad, 0.1, 20 * degreeRad)).toBeGreaterThan(0);
  });
});
