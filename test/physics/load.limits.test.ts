import { describe, expect, it } from 'vitest';
import {
  hingeGustEffort,
  movingEffort,
  panelDragCoefficient,
  slideDragCoefficient,
  slideGustEffort,
  springEffort,
  staticEffort,
} from '../../src/physics/load.js';
import { hinge, lift, noSpring } from './samples.js';
import { degreeRad, significant } from './units.js';

describe('gravity on a feature (closed form)', () => {
  it('of 1.2 kg at 0.25 m on a level hinge asks for 2.941995 N·m', () => {
    expect(significant(staticEffort(hinge, 0), 7)).toBe(2.941995);
  });

  it('vanishes on an upright hinge and changes sign beyond', () => {
    expect(staticEffort(hinge, 90 * degreeRad)).toBeCloseTo(0, 12);
    expect(staticEffort(hinge, 100 * degreeRad)).toBeLessThan(0);
  });

  it('asks the same all along a rail', () => {
    expect(staticEffort(lift, 0)).toBe(2 * 9.80665);
    expect(staticEffort(lift, 0.7)).toBe(2 * 9.80665);
  });

  it('of a leaning carrier is that of a feature raised by the lean', () => {
    const leaning = { ...hinge, leanRad: 10 * degreeRad };
    expect(staticEffort(leaning, 20 * degreeRad)).toBeCloseTo(staticEffort(hinge, 30 * degreeRad), 12);
  });
});

describe('a coil spring of zero free length, anchored straight above the hinge (closed form)', () => {
  // rate × arm × arm = mass × g × distance balances the feature at every angle
  const arms = { frameArmM: 0.1, featureArmM: 0.15 };
  const rateNPerM = hinge.gravityEffort / (arms.frameArmM * arms.featureArmM);
  const balanced = { ...hinge, spring: { ...noSpring, form: 'coil', rateNPerM, ...arms } as const };

  it('leaves nothing to hold at any angle', () => {
    for (let deg = -80; deg <= 90; deg += 10) {
      expect(staticEffort(balanced, deg * degreeRad)).toBeCloseTo(0, 12);
    }
  });
});

describe('a coil spring with a free length', () => {
  const spring = {
    ...noSpring,
    form: 'coil',
    rateNPerM: 800,
    frameArmM: 0.1,
    featureArmM: 0.15,
    freeLengthM: 0.12,
  } as const;
  const lengthM = (angleRad: number) =>
    Math.hypot(0.15 * Math.cos(angleRad), 0.15 * Math.sin(angleRad) - 0.1);
  const energyJ = (angleRad: number) => 400 * Math.max(0, lengthM(angleRad) - 0.12) ** 2;

  it('gives back the energy that is stored in it', () => {
    for (let deg = -60; deg <= 80; deg += 20) {
      const step = 1e-6;
      const slope = (energyJ(deg * degreeRad + step) - energyJ(deg * degreeRad - step)) / (2 * step);
      expect(springEffort(spring, deg * degreeRad)).toBeCloseTo(-slope, 6);
    }
  });

  it('hangs slack and pushes nothing once it is shorter than its free length', () => {
    expect(lengthM(70 * degreeRad)).toBeLessThan(0.12);
    expect(springEffort(spring, 70 * degreeRad)).toBe(0);
  });
});

describe('the moving feature (closed form)', () => {
  it('adds inertia, air and friction to the static effort', () => {
    const load = { ...hinge, dragCoefficient: 0.05, frictionEffort: 0.2 };
    const still = staticEffort(load, 0.3);
    expect(movingEffort(load, still, 2, 3, 1)).toBeCloseTo(still + 0.12 * 3 + 0.05 * 4 + 0.2, 12);
    expect(movingEffort(load, still, -2, 3, -1)).toBeCloseTo(still + 0.12 * 3 - 0.05 * 4 - 0.2, 12);
    // The ends of a move: no speed yet, but friction already works against it.
    expect(movingEffort(load, still, 0, 0, 1)).toBeCloseTo(still + 0.2, 12);
  });

  it('has on a panel the drag that its strips add up to', () => {
    // Strips of area/length × dr at radius r: force ½·ρ·C·(ω·r)² per area, lever r
    const strips = 2000;
    let sum = 0;
    for (let i = 0; i < strips; i++) {
      const radiusM = (0.6 * (i + 0.5)) / strips;
      sum += 0.5 * 1.2 * 1.2 * (0.18 / strips) * radiusM ** 3;
    }
    expect(panelDragCoefficient(0.18, 0.6)).toBeCloseTo(sum, 8);
  });

  it('meets a gust of 5 m/s with half the lever of its length', () => {
    // ½ × 1.2 kg/m³ × 1.2 × 0.18 m² × 25 m²/s² = 3.24 N
    expect(slideGustEffort(0.18, 5)).toBeCloseTo(3.24, 12);
    expect(slideDragCoefficient(0.18) * 25).toBeCloseTo(3.24, 12);
    expect(hingeGustEffort(0.18, 0.6, 5)).toBeCloseTo(3.24 * 0.3, 12);
  });
});
