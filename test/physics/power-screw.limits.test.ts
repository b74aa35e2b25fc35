import { describe, expect, it } from 'vitest';
import {
  lowerTorqueNm,
  raiseTorqueNm,
  screwBackwardEfficiency,
  screwForwardEfficiency,
  type Thread,
} from '../../src/physics/power-screw.js';
import { degreeRad, significant } from './units.js';

const trapezoidalRad = 15 * degreeRad;

/** A square thread of 10 mm and 4 mm lead. */
const square = (frictionCoefficient: number): Thread => ({
  meanDiameterM: 0.01,
  leadM: 0.004,
  frictionCoefficient,
  flankAngleRad: 0,
});

describe('a power screw (closed form)', () => {
  it('that its collar held overhauls without it: −0.46557 N·m', () => {
    // Double square thread 32 × 4 mm, 6.4 kN, friction 0.08, as in the textbook example, collar taken away.
    const thread = { meanDiameterM: 0.03, leadM: 0.008, frictionCoefficient: 0.08, flankAngleRad: 0 };
    const collar = { frictionCoefficient: 0.08, meanDiameterM: 0.04 };
    expect(significant(lowerTorqueNm(6400, thread), 5)).toBe(-0.46557);
    expect(screwBackwardEfficiency(thread)).toBeGreaterThan(0);
    expect(screwBackwardEfficiency({ ...thread, collar })).toBeLessThan(0);
  });

  // Mean diameters 8 − 1.5/2, 8 − 2/2 and 10 − 2/2 mm; lead × cos 15° / (π × mean diameter), worked out by hand.
  it.each([
    ['Tr8x1.5', 7.25, 1.5, 0.0636132],
    ['Tr8x8 with four starts', 7, 8, 0.3513871],
    ['Tr10x2', 9, 2, 0.0683253],
  ])('just locks at its locking friction: %s', (_, meanMm, leadMm, friction) => {
    const at = (share: number): Thread => ({
      meanDiameterM: meanMm / 1000,
      leadM: leadMm / 1000,
      frictionCoefficient: share * friction,
      flankAngleRad: trapezoidalRad,
    });
    expect(screwBackwardEfficiency(at(1))).toBeCloseTo(0, 5);
    expect(screwBackwardEfficiency(at(0.99))).toBeGreaterThan(0);
    expect(screwBackwardEfficiency(at(1.01))).toBeLessThan(0);
    expect(screwForwardEfficiency(at(1))).toBeLessThan(0.5);
  });

  it('without friction trades torque for force at lead/2π both ways', () => {
    expect(raiseTorqueNm(100, square(0))).toBeCloseTo((100 * 0.004) / (2 * Math.PI), 12);
    expect(lowerTorqueNm(100, square(0))).toBeCloseTo((-100 * 0.004) / (2 * Math.PI), 12);
    expect(screwForwardEfficiency({ ...square(0), flankAngleRad: trapezoidalRad })).toBeCloseTo(1, 12);
    expect(screwBackwardEfficiency({ ...square(0), flankAngleRad: trapezoidalRad })).toBeCloseTo(1, 12);
  });

  it('needs in its collar what the collar alone would need', () => {
    const collar = { frictionCoefficient: 0.12, meanDiameterM: 0.02 };
    const moreNm = raiseTorqueNm(100, { ...square(0.1), collar }) - raiseTorqueNm(100, square(0.1));
    expect(moreNm).toBeCloseTo(0.12 * 100 * 0.01, 12);
  });

  it('is the wedge of an inclined plane: friction angle added to the lead angle', () => {
    const lead = Math.atan(0.004 / (Math.PI * 0.01));
    const friction = Math.atan(0.1);
    expect(raiseTorqueNm(100, square(0.1))).toBeCloseTo(0.5 * Math.tan(lead + friction), 12);
    expect(lowerTorqueNm(100, square(0.1))).toBeCloseTo(0.5 * Math.tan(friction - lead), 12);
  });
});
