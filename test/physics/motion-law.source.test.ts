import { describe, expect, it } from 'vitest';
import { lawAcceleration, lawVelocity, type MotionLaw } from '../../src/physics/motion-law.js';

/** Largest magnitude of a function over 0…1, on a grid that hits thirds and eighths. */
function largest(f: (t: number) => number): number {
  let peak = 0;
  for (let i = 0; i <= 240_000; i++) peak = Math.max(peak, Math.abs(f(i / 240_000)));
  return peak;
}

describe('peaks of the motion laws (Rothbart, Cam Design Handbook; Norton, Cam Design and Manufacturing Handbook, from memory; 3-4-5 also Flash & Hogan 1985, minimum jerk)', () => {
  const table: readonly (readonly [MotionLaw, number, number])[] = [
    ['trapezoid', 1.5, 4.5],
    ['harmonic', 1.570796, 4.934802],
    ['cycloidal', 2, 6.283185],
    ['modified-sine', 1.759603, 5.527957],
    ['poly-345', 1.875, 5.773503],
    ['poly-4567', 2.1875, 7.513188],
  ];

  it.each(table)('%s reaches velocity %s and acceleration %s', (law, velocity, acceleration) => {
    expect(largest((t) => lawVelocity(law, t))).toBeCloseTo(velocity, 6);
    expect(largest((t) => lawAcceleration(law, t))).toBeCloseTo(acceleration, 5);
  });
});
