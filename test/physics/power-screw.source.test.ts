import { describe, expect, it } from 'vitest';
import {
  lowerTorqueNm,
  raiseTorqueNm,
  screwBackwardEfficiency,
  screwForwardEfficiency,
  type Thread,
} from '../../src/physics/power-screw.js';
import { degreeRad, inchM, poundForceInchNm, poundForceN, significant } from './units.js';

describe('a square thread of 2 in under 10 000 lbf (statics course text, worked example)', () => {
  // Lead 0.5 in, mean diameter 2 in, friction 0.2, no collar.
  const thread = { meanDiameterM: 2 * inchM, leadM: 0.5 * inchM, frictionCoefficient: 0.2, flankAngleRad: 0 };
  const torque = raiseTorqueNm(10_000 * poundForceN, thread) / poundForceInchNm;

  it('takes 2841 lbf·in to raise, printed as 2840', () => {
    expect(significant(torque, 4)).toBe(2841);
    expect(significant(torque, 3)).toBe(2840);
  });
});

describe('a double square thread 32 × 4 mm under 6.4 kN (Shigley’s Mechanical Engineering Design, power-screw example, from memory)', () => {
  // Mean diameter 32 − 4/2 = 30 mm, lead 2 × 4 = 8 mm, friction 0.08 in thread and collar, collar 40 mm.
  const thread: Thread = {
    meanDiameterM: 0.03,
    leadM: 0.008,
    frictionCoefficient: 0.08,
    flankAngleRad: 0,
    collar: { frictionCoefficient: 0.08, meanDiameterM: 0.04 },
  };
  const raise = raiseTorqueNm(6400, thread);

  it('takes 26.18 N·m to raise', () => {
    expect(significant(raise, 4)).toBe(26.18);
  });

  it('takes 9.77 N·m to lower', () => {
    expect(significant(lowerTorqueNm(6400, thread), 3)).toBe(9.77);
  });

  it('is 31.1 % efficient with its collar', () => {
    expect(significant(screwForwardEfficiency(thread), 3)).toBe(0.311);
    expect((6400 * 0.008) / (2 * Math.PI * raise)).toBeCloseTo(0.311, 3);
  });
});

describe('a jack with a double square thread of 2.75 in (course example)', () => {
  // Root 2.313 in, 2 threads per in, so a lead of 1 in; 20 000 lbf; friction 0.125; collar mean radius 1.125 in.
  const meanIn = (2.75 + 2.313) / 2;
  const thread = {
    meanDiameterM: meanIn * inchM,
    leadM: 1 * inchM,
    frictionCoefficient: 0.125,
    flankAngleRad: 0,
    collar: { frictionCoefficient: 0.125, meanDiameterM: 2.25 * inchM },
  };
  const torque = raiseTorqueNm(20_000 * poundForceN, thread) / poundForceInchNm;

  it('takes 9261 lbf·in to raise, printed as 9260', () => {
    expect(significant(torque, 4)).toBe(9261);
    expect(significant(torque, 3)).toBe(9260);
  });
});

describe('trapezoidal threads (ISO 2904, basic sizes in mm)', () => {
  // nominal, pitch, mean d2, nut major D4, screw minor d3, nut minor D1
  const table = [
    ['Tr10x2', 10, 2, 9, 10.5, 7.5, 8],
    ['Tr12x3', 12, 3, 10.5, 12.5, 8.5, 9],
  ] as const;
  const crestClearanceMm = 0.25;

  it.each(table)(
    '%s has the basic sizes of the table',
    (_, nominal, pitch, mean, nutMajor, minor, nutMinor) => {
      expect(nominal - pitch / 2).toBe(mean);
      expect(nominal + 2 * crestClearanceMm).toBe(nutMajor);
      expect(nominal - pitch - 2 * crestClearanceMm).toBe(minor);
      expect(nominal - pitch).toBe(nutMinor);
    },
  );

  it.each(table)('%s of one start locks with the friction of a greased nut', (_, _nominal, pitch, mean) => {
    // 0.12 is common practice for steel on bronze or plastic.
    const thread = { meanDiameterM: mean / 1000, leadM: pitch / 1000, flankAngleRad: 15 * degreeRad };
    expect(screwBackwardEfficiency({ ...thread, frictionCoefficient: 0.12 })).toBeLessThan(0);
  });
});
