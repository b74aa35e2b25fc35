import { describe, expect, it } from 'vitest';
import { type FallingMotor, fall } from '../../src/physics/fall.js';
import { direct, hinge, noSpring } from './samples.js';

const motor: FallingMotor = {
  speedConstant: 1.1,
  brakingEffort: (1.1 * 0.1) / 0.46,
  backwardEfficiency: 0.46,
  resistanceOhm: 4.8,
  rotorInertia: 0.004,
  shorted: false,
};

describe('when the power is cut', () => {
  it('a drive that brakes with its own friction falls slower than a bare hinge', () => {
    const bare = { ...motor, brakingEffort: 0, rotorInertia: 0 };
    expect(fall(hinge, direct, motor, 0.5, -0.5)!.fallS).toBeGreaterThan(
      fall(hinge, direct, bare, 0.5, -0.5)!.fallS,
    );
  });

  it('joined motor leads slow the fall', () => {
    const open = fall(hinge, direct, motor, 0.5, -0.5)!;
    const shorted = fall(hinge, direct, { ...motor, shorted: true }, 0.5, -0.5)!;
    expect(shorted.fallS).toBeGreaterThan(open.fallS);
    expect(shorted.largestSpeed).toBeLessThan(open.largestSpeed);
  });

  it('nothing falls that friction can hold', () => {
    expect(fall({ ...hinge, frictionEffort: 3 }, direct, motor, 0.5, -0.5)).toBeNull();
    expect(fall(hinge, direct, { ...motor, brakingEffort: (1.1 * 5) / 0.46 }, 0.5, -0.5)).toBeNull();
  });

  it('a drive that locks does not fall', () => {
    expect(fall(hinge, direct, { ...motor, backwardEfficiency: 0 }, 0.5, -0.5)).toBeNull();
    expect(fall(hinge, direct, { ...motor, backwardEfficiency: -0.4 }, 0.5, -0.5)).toBeNull();
  });

  it('a feature that hangs on its stop already does not fall', () => {
    expect(fall(hinge, direct, motor, -0.5, -0.5)).toBeNull();
  });

  it('a spring can catch the feature on its way', () => {
    const spring = { ...noSpring, form: 'linear', stiffness: 12, freePosition: 0.3 } as const;
    expect(fall({ ...hinge, spring }, direct, motor, 0.5, -1.2)).toBeNull();
  });

  it('a spring can slow it before the stop, so that it is fastest on the way', () => {
    const spring = { ...noSpring, form: 'linear', stiffness: 5, freePosition: 0.2 } as const;
    const result = fall({ ...hinge, spring }, direct, motor, 0.5, -0.7)!;
    expect(result.largestSpeed).toBeGreaterThan(1.1 * result.stopSpeed);
  });

  it('from past upright it does not fall back to the lower stop', () => {
    expect(fall(hinge, direct, motor, 1.9, -0.5)).toBeNull();
  });

  it('from a shaky balance it takes long to start and lands as fast as its height says', () => {
    // Let go 1e-7 rad from upright: it creeps, then falls like any other.
    const bare = { ...motor, brakingEffort: 0, rotorInertia: 0 };
    const result = fall(hinge, direct, bare, Math.PI / 2 - 1e-7, -0.5)!;
    const heightEnergyJ = hinge.gravityEffort * (1 + Math.sin(0.5));
    expect((hinge.inertia * result.stopSpeed ** 2) / 2).toBeCloseTo(heightEnergyJ, 3);
    expect(result.fallS).toBeGreaterThan(3);
  });
});
