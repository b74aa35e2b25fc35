import { describe, expect, it } from 'vitest';
import {
  lockingDriveBackward,
  lossRatio,
  meshBackwardEfficiency,
  shakenBackward,
  staticBackward,
  trainBackward,
} from '../../src/physics/gear-train.js';
import { significant } from './units.js';

describe('one mesh with equal friction both ways (relation from memory, re-derived)', () => {
  it('of forward efficiency 0.70 passes 0.5714286 back', () => {
    expect(significant(meshBackwardEfficiency(0.7), 7)).toBe(0.5714286);
  });

  it('loses the same friction in both directions, which is how the relation comes about', () => {
    // Output 1 J forward: input 1/η, loss 1/η − 1. The same loss out of 1 J backward leaves 2 − 1/η.
    expect(1 - meshBackwardEfficiency(0.62)).toBeCloseTo(lossRatio(0.62), 12);
  });

  it('locks at half efficiency and below', () => {
    expect(meshBackwardEfficiency(0.5)).toBe(0);
    expect(meshBackwardEfficiency(0.49)).toBeLessThan(0);
    expect(meshBackwardEfficiency(1)).toBe(1);
  });
});

describe('a train of meshes (closed form)', () => {
  it('of four meshes of 0.85 passes 0.4599562 back', () => {
    expect(significant(trainBackward(0.85, 4), 7)).toBe(0.4599562);
  });

  it('must not be taken for one mesh of its overall efficiency, which would give 0.084', () => {
    // Forward it passes 0.85⁴ = 0.5220062.
    expect(significant(meshBackwardEfficiency(0.5220062), 2)).toBe(0.084);
  });

  it('passes nothing back as soon as its meshes lock, also with an even number of them', () => {
    expect(trainBackward(0.4, 2)).toBe(0);
    expect(trainBackward(0.4, 3)).toBe(0);
  });

  it('without meshes passes everything', () => {
    expect(trainBackward(0.7, 0)).toBe(1);
  });
});

describe('a locking mesh behind spur stages', () => {
  it('that yields pays the backward loss of the spur stages', () => {
    expect(lockingDriveBackward(0.5, 0.9)).toBeCloseTo(0.5 * (2 - 1 / 0.9), 12);
  });

  it('that locks has to be driven through them', () => {
    expect(lockingDriveBackward(-0.5, 0.9)).toBeCloseTo(-0.5 / 0.9, 12);
  });

  it('is the mesh itself when the spur stages lose nothing', () => {
    expect(lockingDriveBackward(0.3, 1)).toBeCloseTo(0.3, 12);
    expect(lockingDriveBackward(-0.3, 1)).toBeCloseTo(-0.3, 12);
  });

  it('has no step where it begins to lock', () => {
    expect(lockingDriveBackward(1e-12)).toBeCloseTo(lockingDriveBackward(-1e-12), 11);
  });
});

describe('a mesh at rest', () => {
  it('locks more easily than a running one', () => {
    expect(staticBackward(0.52)).toBeLessThan(0);
    expect(meshBackwardEfficiency(0.52)).toBeGreaterThan(0);
  });

  it('with equal static and running friction behaves as if it ran', () => {
    expect(staticBackward(0.6, 1)).toBeCloseTo(meshBackwardEfficiency(0.6), 12);
  });

  it('loses part of its hold when it is shaken, and all of it when nothing of the friction is left', () => {
    expect(shakenBackward(0.52, 0.5)).toBeGreaterThan(staticBackward(0.52));
    expect(shakenBackward(0.52, 1)).toBeCloseTo(staticBackward(0.52), 12);
    expect(shakenBackward(0.52, 0)).toBe(1);
  });
});
