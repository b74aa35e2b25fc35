import { describe, expect, it } from 'vitest';
import { peakEffort, springEffort, staticEffort } from '../../src/physics/load.js';
import { hinge, noSpring } from './samples.js';

describe('the peak effort', () => {
  it('is the static effort when nothing disturbs the feature', () => {
    expect(peakEffort(hinge, 0.4)).toBe(staticEffort(hinge, 0.4));
  });

  it('takes walking, friction and gust in their worst direction', () => {
    const load = { ...hinge, bounceFraction: 0.3, frictionEffort: 0.2, gustEffort: 0.5 };
    expect(peakEffort(load, 0)).toBeCloseTo(1.3 * hinge.gravityEffort + 0.7, 12);
  });

  it('is negative when the spring pulls harder than gravity', () => {
    const spring = { ...noSpring, form: 'constant', constantEffort: 5 } as const;
    const load = { ...hinge, bounceFraction: 0.3, frictionEffort: 0.2, spring };
    expect(peakEffort(load, 0)).toBeCloseTo(0.7 * hinge.gravityEffort - 5 - 0.2, 12);
  });

  it('of a balanced feature is what walking leaves, although the static effort is zero', () => {
    const spring = { ...noSpring, form: 'constant', constantEffort: hinge.gravityEffort } as const;
    const load = { ...hinge, bounceFraction: 0.5, spring };
    expect(staticEffort(load, 0)).toBe(0);
    expect(Math.abs(peakEffort(load, 0))).toBeCloseTo(0.5 * hinge.gravityEffort, 12);
  });

  it('beyond upright points the other way', () => {
    expect(peakEffort({ ...hinge, bounceFraction: 0.3 }, 2)).toBeCloseTo(1.3 * staticEffort(hinge, 2), 12);
  });
});

describe('an assist spring', () => {
  it('that is wound against the fall helps below its free position and hinders above it', () => {
    const spring = { ...noSpring, form: 'linear', stiffness: 2, freePosition: 0.5 } as const;
    expect(springEffort(spring, 0)).toBe(1);
    expect(springEffort(spring, 0.5)).toBe(0);
    expect(springEffort(spring, 1)).toBe(-1);
  });

  it('of constant effort helps the same everywhere, and none helps nothing', () => {
    const spring = { ...noSpring, form: 'constant', constantEffort: 1.5 } as const;
    expect(springEffort(spring, -1)).toBe(1.5);
    expect(springEffort(spring, 1)).toBe(1.5);
    expect(springEffort(noSpring, 1)).toBe(0);
  });
});
