import { describe, expect, it } from 'vitest';
import { copperResistanceRatio, motorFromStall, motorSpeed } from '../../src/physics/dc-motor.js';
import { celsiusK, rpmRadPerS, significant } from './units.js';

describe('copper (IEC 60028, temperature coefficient 0.00393 1/K at 20 °C, from memory)', () => {
  it('has 1.3144 times its resistance at 100 °C', () => {
    expect(significant(copperResistanceRatio(celsiusK(100)), 5)).toBe(1.3144);
  });

  it('has its listed resistance at 20 °C', () => {
    expect(copperResistanceRatio(celsiusK(20))).toBe(1);
  });
});

describe('output of a brushed motor (any machines text, such as Hughes & Drury, Electric Motors and Drives, ch. 3)', () => {
  // 12 V, 100 rpm, 0.10 A; 2.0 N·m, 2.5 A
  const motor = motorFromStall(12, 100 * rpmRadPerS, 0.1, 2.5, 2);
  const outputW = (effort: number) => {
    const currentA = 0.1 + effort / (motor.forwardEfficiency * motor.speedConstant);
    return effort * motorSpeed(12, currentA, motor.resistanceOhm, motor.speedConstant);
  };

  it('is largest at half the stall effort, where it turns at half its no-load speed', () => {
    expect(significant(outputW(1), 7)).toBe(5.235988);
    expect(outputW(0.99)).toBeLessThan(outputW(1));
    expect(outputW(1.01)).toBeLessThan(outputW(1));
  });
});
