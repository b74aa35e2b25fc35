import { describe, expect, it } from 'vitest';
import {
  driveEffortAtRest,
  driveEffortMoving,
  driveEffortPushing,
  driveEffortYielding,
  speedRatio,
  speedRatioSlope,
  strutLengthM,
} from '../../src/physics/linkage.js';
import { direct, strut } from './samples.js';

const geared = { ...direct, kind: 'geared', fixedRatio: 3, efficiency: 0.9, driveCount: 2 } as const;

describe('a coupling', () => {
  it('with a fixed ratio has it everywhere and no slope', () => {
    expect(speedRatio(geared, 1.2)).toBe(3);
    expect(speedRatioSlope(geared, 1.2)).toBe(0);
  });

  it('shares the load between the drives', () => {
    expect(driveEffortAtRest(12, 3, geared)).toBe(2);
  });

  it('costs effort while the drive pushes and saves effort while the load pushes', () => {
    expect(driveEffortPushing(12, 3, geared)).toBeCloseTo(2 / 0.9, 12);
    expect(driveEffortYielding(12, 3, geared)).toBeCloseTo(2 * 0.9, 12);
  });

  it('is pushed against when effort and motion agree, yields when they oppose, and pushes off from rest', () => {
    expect(driveEffortMoving(12, 0.5, 3, geared)).toBe(driveEffortPushing(12, 3, geared));
    expect(driveEffortMoving(-12, -0.5, 3, geared)).toBe(driveEffortPushing(-12, 3, geared));
    expect(driveEffortMoving(12, -0.5, 3, geared)).toBe(driveEffortYielding(12, 3, geared));
    expect(driveEffortMoving(-12, 0.5, 3, geared)).toBe(driveEffortYielding(-12, 3, geared));
    expect(driveEffortMoving(12, 0, 3, geared)).toBe(driveEffortPushing(12, 3, geared));
  });
});

describe('a strut on the pull side', () => {
  const pull = { ...strut, sideSign: -1 } as const;

  it('shortens as the feature rises and must pull', () => {
    expect(strutLengthM(pull, 0.1)).toBeLessThan(strutLengthM(pull, 0));
    expect(speedRatio(pull, 0.1)).toBeLessThan(0);
    expect(driveEffortAtRest(3, speedRatio(pull, 0.1), pull)).toBeLessThan(0);
  });

  it('mirrors the push side', () => {
    expect(strutLengthM(pull, 0.3)).toBeCloseTo(strutLengthM(strut, -0.3), 12);
    expect(speedRatio(pull, 0.3)).toBeCloseTo(-speedRatio(strut, -0.3), 12);
    expect(speedRatioSlope(pull, 0.3)).toBeCloseTo(speedRatioSlope(strut, -0.3), 12);
  });
});
