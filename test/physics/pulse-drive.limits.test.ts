import { describe, expect, it } from 'vitest';
import {
  pulseBlend,
  pulseBusCurrentRatio,
  pulseHoldBusCurrentA,
  pulseMovingBusCurrentA,
} from '../../src/physics/pulse-drive.js';
import { solveElsewhere } from './second-opinion.js';
import { significant } from './units.js';

/** Pack current of a resistor and coil under pulses by solving its differential equation, in units of V/R. */
function marched(dutyFraction: number, pulseRatio: number): number {
  // Time in periods: d(i)/dt = p·(v − i), charge from the pack only while v = 1.
  const periods = Math.max(3, Math.ceil(40 / pulseRatio));
  let state = [dutyFraction, 0];
  for (let period = 0; period < periods; period++) {
    state = solveElsewhere((_, [i]) => [pulseRatio * (1 - i!), i!], [state[0]!, 0], dutyFraction);
    const chargeA = state[1]!;
    state = solveElsewhere((_, [i]) => [-pulseRatio * i!, 0], [state[0]!, chargeA], 1 - dutyFraction);
  }
  return state[1]!;
}

describe('pack current of a pulsed hold (closed form of the resistor-coil circuit)', () => {
  const timeConstantS = 0.3e-3;

  it('at 30 % of stall is near the linear rule on slow pulses and below it on faster ones', () => {
    expect(significant(pulseBusCurrentRatio(0.3, 1 / (50 * timeConstantS)), 4)).toBe(0.285);
    expect(significant(pulseBusCurrentRatio(0.3, 1 / (300 * timeConstantS)), 7)).toBe(0.2132457);
  });

  it('agrees with time-marching of the circuit', () => {
    for (const [duty, ratio] of [
      [0.3, 1 / (50 * timeConstantS)],
      [0.3, 1 / (300 * timeConstantS)],
      [0.7, 3],
      [0.05, 0.8],
    ] as const) {
      expect(pulseBusCurrentRatio(duty, ratio)).toBeCloseTo(marched(duty, ratio), 8);
    }
  });

  it('tends to duty² for fast pulses and to duty for slow ones', () => {
    for (const duty of [0, 0.01, 0.3, 0.9, 1]) {
      expect(pulseBusCurrentRatio(duty, 0)).toBe(duty * duty);
      expect(pulseBusCurrentRatio(duty, 1e-9)).toBeCloseTo(duty * duty, 15);
      expect(pulseBusCurrentRatio(duty, 1e9)).toBeCloseTo(duty, 8);
      expect(pulseBusCurrentRatio(duty, Number.POSITIVE_INFINITY)).toBeCloseTo(duty, 15);
    }
  });

  it('keeps its digits where the series takes over from the closed form', () => {
    for (const duty of [0.02, 0.3, 0.5, 0.97]) {
      const below = pulseBlend(duty, 0.1 * (1 - 1e-9));
      const above = pulseBlend(duty, 0.1 * (1 + 1e-9));
      expect(above / below).toBeCloseTo(1, 7);
    }
  });

  it('grows with D·(1 − D)·p²/12 over D² for fast pulses, the leading term of the series', () => {
    for (const ratio of [1e-6, 1e-3, 0.02]) {
      const leading = (0.3 * 0.7 * ratio * ratio) / 12;
      expect(pulseBlend(0.3, ratio) / leading).toBeCloseTo(1, 4);
    }
  });

  it('lies between duty² and duty everywhere', () => {
    for (let exponent = -6; exponent <= 6; exponent += 0.25) {
      for (let duty = 0; duty <= 1; duty += 0.05) {
        const blend = pulseBlend(duty, 10 ** exponent);
        expect(blend).toBeGreaterThanOrEqual(0);
        expect(blend).toBeLessThanOrEqual(1);
      }
    }
  });
});

describe('a pulsed drive on the pack', () => {
  it('at stall draws its stall current, and no more when more is asked of it', () => {
    expect(pulseHoldBusCurrentA(2.5, 4.8, 12, 3)).toBeCloseTo(2.5, 12);
    expect(pulseHoldBusCurrentA(4, 4.8, 12, 3)).toBeCloseTo(2.5, 12);
  });

  it('at rest without load draws nothing', () => {
    expect(pulseHoldBusCurrentA(0, 4.8, 12, 3)).toBe(0);
  });

  it('moving on fast pulses draws what its motor power needs', () => {
    expect(pulseMovingBusCurrentA(1.5, 6, 12, 0) * 12).toBeCloseTo(1.5 * 6, 12);
  });

  it('moving on slow pulses draws its motor current', () => {
    expect(pulseMovingBusCurrentA(-1.5, 6, 12, 1)).toBeCloseTo(1.5, 12);
  });

  it('gives the hold current again at speed 0, where the motor voltage is I·R', () => {
    const duty = (0.8 * 4.8) / 12;
    const moving = pulseMovingBusCurrentA(0.8, 0.8 * 4.8, 12, pulseBlend(duty, 2));
    expect(moving).toBeCloseTo(pulseHoldBusCurrentA(0.8, 4.8, 12, 2), 12);
  });
});
