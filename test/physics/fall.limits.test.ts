import { describe, expect, it } from 'vitest';
import { type FallingMotor, fall } from '../../src/physics/fall.js';
import { type CouplingParameters, speedRatio } from '../../src/physics/linkage.js';
import type { LoadParameters } from '../../src/physics/load.js';
import { direct, hinge, lift, noSpring, rod, strut } from './samples.js';
import { solveElsewhere } from './second-opinion.js';
import { degreeRad, significant } from './units.js';

/** A coupling that nothing hangs on. */
const noMotor: FallingMotor = {
  speedConstant: 0,
  brakingEffort: 0,
  backwardEfficiency: 1,
  resistanceOhm: 1,
  rotorInertia: 0,
  shorted: false,
};

/** A geared motor that yields: 4.8 Ω, 1.1 V·s/rad, 0.1 A, gears that pass 46 % back, 15 ms. */
const yielding: FallingMotor = {
  speedConstant: 1.1,
  brakingEffort: (1.1 * 0.1) / 0.46,
  backwardEfficiency: 0.46,
  resistanceOhm: 4.8,
  rotorInertia: (0.015 * 1.1 ** 2) / 4.8,
  shorted: false,
};

describe('a rod of 0.5 kg and 0.6 m that falls from level without friction (energy balance)', () => {
  const result = fall(rod, direct, noMotor, 0, -90 * degreeRad)!;

  it('lands with 1.470997 J at 7.002375 rad/s, its tip at 4.201425 m/s', () => {
    // 0.5 kg × 9.80665 m/s² × 0.3 m = 1.4709975 J
    expect((rod.inertia * result.stopSpeed ** 2) / 2).toBeCloseTo(1.4709975, 6);
    expect(significant(result.stopSpeed, 7)).toBe(7.002375);
    expect(significant(0.6 * result.stopSpeed, 7)).toBe(4.201425);
    expect(result.largestSpeed).toBe(result.stopSpeed);
  });

  it('takes a quarter of the period of a pendulum that swings to 90°', () => {
    // K(sin 45°) = Γ(1/4)²/(4√π) = 1.854074677 (Abramowitz & Stegun, table 17.1, from memory); equivalent length 2/3 of the rod
    expect(result.fallS).toBeCloseTo(1.854074677 * Math.sqrt(0.4 / 9.80665), 9);
  });

  it('needs no more than 12 steps for five digits', () => {
    const quick = fall(rod, direct, noMotor, 0, -90 * degreeRad, 12)!;
    expect(quick.fallS / result.fallS).toBeCloseTo(1, 5);
    expect(quick.stopSpeed / result.stopSpeed).toBeCloseTo(1, 5);
  });
});

describe('a load that drops down a rail', () => {
  it('falls freely by ½·g·t²', () => {
    const result = fall(lift, direct, noMotor, 0.5, 0)!;
    expect(result.fallS).toBeCloseTo(Math.sqrt((2 * 0.5) / 9.80665), 10);
    expect(result.stopSpeed).toBeCloseTo(Math.sqrt(2 * 9.80665 * 0.5), 10);
  });

  it('against air reaches the speed of its closed form', () => {
    // v² = (m·g/c)·(1 − e^(−2·c·h/m))
    const result = fall({ ...lift, dragCoefficient: 3 }, direct, noMotor, 2, 0)!;
    const squared = ((2 * 9.80665) / 3) * (1 - Math.exp((-2 * 3 * 2) / 2));
    expect(result.stopSpeed).toBeCloseTo(Math.sqrt(squared), 6);
  });

  it('on a shorted drive sinks at the speed where braking carries the weight', () => {
    // Spool of 20 mm radius, 0.95; motor 20 V·s/rad, 50 Ω, 0.3 backward, no rotor: stiff braking.
    const spool: CouplingParameters = { ...direct, kind: 'spool', fixedRatio: 1 / 0.02, efficiency: 0.95 };
    const motor: FallingMotor = {
      speedConstant: 20,
      brakingEffort: 0,
      backwardEfficiency: 0.3,
      resistanceOhm: 50,
      rotorInertia: 0,
      shorted: true,
    };
    const speed = (2 * 9.80665 * 0.3 * 0.95 * 50) / (50 * 20) ** 2;
    const result = fall(lift, spool, motor, 0.5, 0)!;
    expect(result.stopSpeed / speed).toBeCloseTo(1, 9);
    // The run-up of 28 µs is nothing beside the half hour that it takes.
    expect((result.fallS * speed) / 0.5).toBeCloseTo(1, 5);
    expect(fall(lift, spool, motor, 0.5, 0, 24)!.fallS / result.fallS).toBeCloseTo(1, 4);
  });
});

describe('a fall against a second solver', () => {
  const spring = { ...noSpring, form: 'linear', stiffness: 0.4, freePosition: 0.5 } as const;
  const load: LoadParameters = { ...hinge, dragCoefficient: 0.02, frictionEffort: 0.05, spring };

  /** Angle and downward speed after a time, written out again from the equation of motion. */
  function elsewhere(coupling: CouplingParameters, motor: FallingMotor, fromRad: number, timeS: number) {
    return solveElsewhere(
      (_, [angle, speed]) => {
        const ratio = Math.abs(speedRatio(coupling, angle!));
        const shortedA = motor.shorted ? (motor.speedConstant * ratio * speed!) / motor.resistanceOhm : 0;
        const shortedEffort = (motor.speedConstant * shortedA) / motor.backwardEfficiency;
        const drive = coupling.driveCount * ratio * (motor.brakingEffort + shortedEffort);
        const inertia =
          load.inertia + (coupling.driveCount * ratio ** 2 * motor.rotorInertia) / motor.backwardEfficiency;
        const gravity = load.gravityEffort * Math.cos(angle!) - 0.4 * (0.5 - angle!);
        const braking = 0.05 + 0.02 * speed! ** 2 + drive / coupling.efficiency;
        // The rotors' inertia seen by the feature, by its slope: d(n·J·u²/2)/dx, taken numerically.
        const seen = (at: number) =>
          (coupling.driveCount * speedRatio(coupling, at) ** 2 * motor.rotorInertia) / 2;
        const changing = (seen(angle! + 1e-6) - seen(angle! - 1e-6)) / 2e-6 / motor.backwardEfficiency;
        return [-speed!, (gravity - braking + changing * speed! ** 2) / inertia];
      },
      [fromRad, 0],
      timeS,
    );
  }

  it.each([
    ['direct, leads open', direct, yielding],
    ['direct, leads shorted', direct, { ...yielding, shorted: true }],
    [
      'two drives over gears, leads shorted',
      { ...direct, kind: 'geared', fixedRatio: 1.5, efficiency: 0.9, driveCount: 2 },
      { ...yielding, shorted: true },
    ],
    [
      'on a strut, leads open',
      strut,
      { ...yielding, speedConstant: 40, brakingEffort: (40 * 0.05) / 0.46, rotorInertia: 0.5 },
    ],
    [
      'on a strut, leads shorted',
      strut,
      { ...yielding, speedConstant: 40, brakingEffort: (40 * 0.05) / 0.46, rotorInertia: 0.5, shorted: true },
    ],
  ] as const)('%s: lands where and as fast as it says', (_, coupling, motor) => {
    const result = fall(load, coupling as CouplingParameters, motor, 0.7, -0.6)!;
    const [angle, speed] = elsewhere(coupling as CouplingParameters, motor, 0.7, result.fallS);
    expect(angle).toBeCloseTo(-0.6, 5);
    expect(speed! / result.stopSpeed).toBeCloseTo(1, 5);
  });
});

describe('a strut without any loss', () => {
  it('turns all the height into motion of feature and rotor', () => {
    const load: LoadParameters = { ...rod };
    const motor: FallingMotor = {
      speedConstant: 40,
      brakingEffort: 0,
      backwardEfficiency: 1,
      resistanceOhm: 1,
      rotorInertia: 2,
      shorted: false,
    };
    const landed = fall(load, strut, motor, 0.7, -0.6)!;
    const moving = load.inertia + strut.driveCount * speedRatio(strut, -0.6) ** 2 * motor.rotorInertia;
    const heightJ = load.gravityEffort * (Math.sin(0.7) - Math.sin(-0.6));
    expect(0.5 * moving * landed.stopSpeed ** 2).toBeCloseTo(heightJ, 6);
  });
});
