import { describe, expect, it } from 'vitest';
import {
  lawAcceleration,
  lawPosition,
  lawVelocity,
  type MotionLaw,
  motionLaws,
} from '../../src/physics/motion-law.js';

const count = 24_000;

/** Integral over 0…1 by the midpoint rule; the grid has a point on every corner of the laws. */
function integral(f: (t: number) => number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += f((i + 0.5) / count);
  return sum / count;
}

describe('RMS acceleration of the motion laws (closed form, here by numeric integration)', () => {
  const table: readonly (readonly [MotionLaw, number])[] = [
    ['trapezoid', 3.674235],
    ['harmonic', 3.489432],
    ['cycloidal', 4.442883],
    ['modified-sine', 3.908856],
    ['poly-345', 4.140393],
    ['poly-4567', 5.04525],
  ];

  it.each(table)('%s: %s travels per duration²', (law, rms) => {
    expect(Math.sqrt(integral((t) => lawAcceleration(law, t) ** 2))).toBeCloseTo(rms, 6);
  });
});

describe.each(motionLaws)('the law %s', (law) => {
  it('begins and ends at rest, at the two ends of its travel', () => {
    expect([lawPosition(law, 0), lawPosition(law, 1)]).toEqual([0, 1]);
    expect(lawPosition(law, 1e-9)).toBeCloseTo(0, 8);
    expect(lawPosition(law, 1 - 1e-9)).toBeCloseTo(1, 8);
    expect([lawVelocity(law, 0), lawVelocity(law, 1)]).toEqual([0, 0]);
    expect(lawVelocity(law, 1e-9)).toBeCloseTo(0, 7);
  });

  it('has the velocity that its acceleration adds up to, and the travel that its velocity adds up to', () => {
    expect(integral((t) => lawVelocity(law, t))).toBeCloseTo(1, 7);
    const half = integral((t) => (t < 0.5 ? lawVelocity(law, t) : 0));
    expect(half).toBeCloseTo(lawPosition(law, 0.5), 7);
    expect(integral((t) => (t < 0.5 ? lawAcceleration(law, t) : 0))).toBeCloseTo(lawVelocity(law, 0.5), 7);
  });

  it('is the derivative of its position everywhere', () => {
    for (let t = 0.013; t < 1; t += 0.031) {
      const step = 1e-6;
      const velocity = (lawPosition(law, t + step) - lawPosition(law, t - step)) / (2 * step);
      expect(lawVelocity(law, t)).toBeCloseTo(velocity, 7);
    }
  });

  it('is the same forwards and backwards', () => {
    for (let t = 0.05; t < 0.5; t += 0.07) {
      expect(lawPosition(law, t) + lawPosition(law, 1 - t)).toBeCloseTo(1, 12);
      expect(lawVelocity(law, t)).toBeCloseTo(lawVelocity(law, 1 - t), 12);
      expect(lawAcceleration(law, t)).toBeCloseTo(-lawAcceleration(law, 1 - t), 12);
    }
  });

  it('stands still before and after the move', () => {
    for (const t of [-0.5, 1.5]) {
      expect(lawPosition(law, t)).toBe(t < 0 ? 0 : 1);
      expect(lawVelocity(law, t)).toBe(0);
      expect(lawAcceleration(law, t)).toBe(0);
    }
  });
});
