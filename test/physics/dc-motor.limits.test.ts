import { describe, expect, it } from 'vitest';
import {
  holdCurrentA,
  missingStallCurrentA,
  motorCurrentA,
  motorFromRatedPoint,
  motorFromStall,
  motorSpeed,
  motorVoltageV,
  rotorInertia,
  stallEffortOf,
} from '../../src/physics/dc-motor.js';
import { kilogramForceCentimetreNm, rpmRadPerS, significant } from './units.js';

/** 12 V, 100 rpm, 0.10 A running free; 2.0 N·m, 2.5 A at stall. Closed form of the linear brushed motor. */
const motor = motorFromStall(12, 100 * rpmRadPerS, 0.1, 2.5, 2);
const forwardTorqueConstant = motor.forwardEfficiency * motor.speedConstant;
const currentAt = (effort: number) =>
  motorCurrentA(effort, 0.1, forwardTorqueConstant, motor.speedConstant, 1);
const rpmAt = (voltageV: number, effort: number) =>
  motorSpeed(voltageV, currentAt(effort), motor.resistanceOhm, motor.speedConstant) / rpmRadPerS;

describe('a brushed motor from its no-load and stall point (closed form, linear motor)', () => {
  it('has the resistance, constants and gear efficiency that the sheet implies', () => {
    expect(significant(motor.resistanceOhm, 7)).toBe(4.8);
    expect(significant(motor.speedConstant, 7)).toBe(1.100079);
    expect(significant(forwardTorqueConstant, 4)).toBe(0.8333);
    expect(significant(motor.forwardEfficiency, 7)).toBe(0.7575214);
  });

  it('draws 0.70 A at 0.5 N·m and turns slower on less voltage', () => {
    expect(significant(currentAt(0.5), 7)).toBe(0.7);
    expect(significant(rpmAt(12, 0.5), 7)).toBe(75);
    expect(significant(rpmAt(9, 0.5), 6)).toBe(48.9583);
  });

  it('is most efficient at √(no-load × stall current), found by trying every current', () => {
    let best = { currentA: 0, efficiency: 0 };
    for (let currentA = 0.1; currentA <= 2.5; currentA += 1e-4) {
      const effort = (currentA - 0.1) * forwardTorqueConstant;
      const speed = motorSpeed(12, currentA, motor.resistanceOhm, motor.speedConstant);
      const efficiency = (effort * speed) / (12 * currentA);
      if (efficiency > best.efficiency) best = { currentA, efficiency };
    }
    expect(best.currentA).toBeCloseTo(Math.sqrt(0.1 * 2.5), 3);
    expect(significant(best.efficiency, 6)).toBe(0.484814);
  });

  it('implies an efficiency over 1 for a sheet that breaks energy conservation', () => {
    // 6 V, 0.14 s per 60°, 10 kgf·cm, 0.15 A, 1.0 A
    const sheet = motorFromStall(6, Math.PI / 3 / 0.14, 0.15, 1, 10 * kilogramForceCentimetreNm);
    expect(significant(sheet.forwardEfficiency, 5)).toBe(1.6921);
  });

  it('gives back the stall effort it was made from', () => {
    expect(stallEffortOf(motor)).toBeCloseTo(2, 12);
  });
});

describe('a brushed motor from its no-load and rated point', () => {
  it('is the same motor when the rated point lies on the same line', () => {
    const same = motorFromRatedPoint(12, 100 * rpmRadPerS, 0.1, 75 * rpmRadPerS, 0.7, 0.5);
    expect(same.resistanceOhm).toBeCloseTo(motor.resistanceOhm, 12);
    expect(same.speedConstant).toBeCloseTo(motor.speedConstant, 12);
    expect(same.stallCurrentA).toBeCloseTo(2.5, 12);
    expect(same.forwardEfficiency).toBeCloseTo(motor.forwardEfficiency, 12);
  });

  it('fits both of its points by Ohm’s law, whatever they are', () => {
    const other = motorFromRatedPoint(6, 8, 0.2, 5, 1.1, 0.4);
    expect(motorVoltageV(0.2, 8, other.resistanceOhm, other.speedConstant)).toBeCloseTo(6, 12);
    expect(motorVoltageV(1.1, 5, other.resistanceOhm, other.speedConstant)).toBeCloseTo(6, 12);
  });
});

describe('gaps of a sheet', () => {
  it('the stall current that fills a gap gives the typical efficiency back', () => {
    const stallCurrentA = missingStallCurrentA(1.5, 7, 0.65, 6, 0.08);
    const filled = motorFromStall(6, 7, 0.08 * stallCurrentA, stallCurrentA, 1.5);
    expect(filled.forwardEfficiency).toBeCloseTo(0.65, 12);
  });
});

describe('limit cases of the motor', () => {
  it('an unloaded drive takes its no-load current', () => {
    expect(motorCurrentA(0, 0.1, 0.8, 1, 0.5)).toBe(0.1);
  });

  it('a frictionless drive takes the same current both ways', () => {
    expect(motorCurrentA(0.6, 0, 1.2, 1.2, 1)).toBeCloseTo(0.5, 12);
    expect(motorCurrentA(-0.6, 0, 1.2, 1.2, 1)).toBeCloseTo(-0.5, 12);
  });

  it('a hold without friction has one current only', () => {
    for (const fraction of [0, 0.15, 1]) {
      expect(holdCurrentA(0.6, 0, 1.2, 1.2, 1, fraction)).toBeCloseTo(0.5, 12);
    }
  });

  it('a free rotor under its own inertia runs up with the mechanical time constant', () => {
    const inertia = rotorInertia(0.015, motor.speedConstant, motor.resistanceOhm);
    const runUpS = (inertia * motor.resistanceOhm) / motor.speedConstant ** 2;
    expect(runUpS).toBeCloseTo(0.015, 12);
  });
});
