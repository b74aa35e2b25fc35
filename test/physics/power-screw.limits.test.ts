import { describe, expect, it } from 'vitest';
import {
  lowerTorqueNm,
  raiseTorqueNm,
  screwBackwardEfficiency,
  screwForwardEfficiency,
  screwLockingFriction,
} from '../../src/physics/power-screw.js';
import { degreeRad, significant } from './units.js';

const trapezoidalRad = 15 * degreeRad;

describe('a power screw (closed form)', () => {
  it('that its collar held overhauls without it: −0.46557 N·m', () => {
    // Double square thread 32 × 4 mm, 6.4 kN, friction 0.08, as in the textbook example, collar taken away.
    const torque = lowerTorqueNm(6400, 0.03, 0.008, 0.08, 0, 0, 0);
    expect(significant(torque, 5)).toBe(-0.46557);
    expect(screwBackwardEfficiency(0.03, 0.008, 0.08, 0)).toBeGreaterThan(0);
    expect(screwBackwardEfficiency(0.03, 0.008, 0.08, 0, 0.08, 0.04)).toBeLessThan(0);
  });

  it('just locks at 0.0636132 for Tr8x1.5 and at 0.3513871 for Tr8x8 with four starts', () => {
    // Mean diameters 8 − 1.5/2 and 8 − 2/2 mm.
    expect(significant(screwLockingFriction(0.00725, 0.0015, trapezoidalRad), 6)).toBe(0.0636132);
    expect(significant(screwLockingFriction(0.007, 0.008, trapezoidalRad), 7)).toBe(0.3513871);
  });

  it('passes nothing back at its locking friction', () => {
    const friction = screwLockingFriction(0.009, 0.002, trapezoidalRad);
    expect(screwBackwardEfficiency(0.009, 0.002, friction, trapezoidalRad)).toBeCloseTo(0, 12);
    expect(screwBackwardEfficiency(0.009, 0.002, 1.01 * friction, trapezoidalRad)).toBeLessThan(0);
    expect(screwForwardEfficiency(0.009, 0.002, friction, trapezoidalRad)).toBeLessThan(0.5);
  });

  it('without friction trades torque for force at lead/2π both ways', () => {
    expect(raiseTorqueNm(100, 0.01, 0.004, 0, 0, 0, 0)).toBeCloseTo((100 * 0.004) / (2 * Math.PI), 12);
    expect(lowerTorqueNm(100, 0.01, 0.004, 0, 0, 0, 0)).toBeCloseTo((-100 * 0.004) / (2 * Math.PI), 12);
    expect(screwForwardEfficiency(0.01, 0.004, 0, trapezoidalRad)).toBeCloseTo(1, 12);
    expect(screwBackwardEfficiency(0.01, 0.004, 0, trapezoidalRad)).toBeCloseTo(1, 12);
  });

  it('needs in its collar what the collar alone would need', () => {
    const collar =
      raiseTorqueNm(100, 0.01, 0.004, 0.1, 0, 0.12, 0.02) - raiseTorqueNm(100, 0.01, 0.004, 0.1, 0, 0, 0);
    expect(collar).toBeCloseTo(0.12 * 100 * 0.01, 12);
  });

  it('is the wedge of an inclined plane: friction angle added to the lead angle', () => {
    const lead = Math.atan(0.004 / (Math.PI * 0.01));
    const friction = Math.atan(0.1);
    expect(raiseTorqueNm(100, 0.01, 0.004, 0.1, 0, 0, 0)).toBeCloseTo(0.5 * Math.tan(lead + friction), 12);
    expect(lowerTorqueNm(100, 0.01, 0.004, 0.1, 0, 0, 0)).toBeCloseTo(0.5 * Math.tan(friction - lead), 12);
  });
});
