import { describe, expect, it } from 'vitest';
import { bodyInertia, weightN } from '../../src/physics/load.js';

describe('moments of inertia (any mechanics text, such as Meriam & Kraige, Dynamics, table of mass moments)', () => {
  it('a rod of 0.5 kg and 0.6 m about its end, and a plate about its edge, have 0.0600 kg·m²', () => {
    expect(bodyInertia('rod', 0.5, 0.3, 0.6)).toBeCloseTo(0.06, 12);
    expect(bodyInertia('panel', 0.5, 0.3, 0.6)).toBeCloseTo(0.06, 12);
  });

  it('a point mass has mass × distance²', () => {
    expect(bodyInertia('point', 0.5, 0.3, 0.6)).toBeCloseTo(0.045, 12);
  });

  it('an unknown shape is taken close to a rod that balances at half its length', () => {
    expect(bodyInertia('unknown', 0.5, 0.3, 0.6) / bodyInertia('rod', 0.5, 0.3, 0.6)).toBeCloseTo(1, 2);
  });
});

describe('standard gravity (3rd CGPM, 1901)', () => {
  it('gives 1 kg a weight of 9.80665 N, one kilogram-force', () => {
    expect(weightN(1)).toBe(9.80665);
  });
});
