import { describe, expect, it } from 'vitest';
import {
  driveEffortAtRest,
  speedRatio,
  speedRatioSlope,
  strutAngleRad,
  strutLengthM,
} from '../../src/physics/linkage.js';
import { staticEffort } from '../../src/physics/load.js';
import { hinge, strut } from './samples.js';
import { degreeRad, significant } from './units.js';

/** Feature position at which the arms of the sample strut stand at this angle. */
const positionAt = (betweenDeg: number) => (betweenDeg - 85) * degreeRad;

describe('a strut with arms of 120 and 80 mm under 1.2 kg at 0.25 m (law of cosines; virtual work agrees)', () => {
  // degrees between the arms; length and moment arm in mm, force in N
  const table = [
    [40, 78.051, 79.061, 26.313],
    [85, 138.299, 69.151, 42.545],
    [130, 182.048, 40.396, 51.498],
  ] as const;

  it.each(table)('at %s° has length %s mm, arm %s mm and force %s N', (deg, lengthMm, armMm, forceN) => {
    const position = positionAt(deg);
    expect(strutAngleRad(strut, position)).toBeCloseTo(deg * degreeRad, 12);
    expect(significant(1000 * strutLengthM(strut, position), lengthMm > 100 ? 6 : 5)).toBe(lengthMm);
    expect(significant(1000 * speedRatio(strut, position), 5)).toBe(armMm);
    const force = driveEffortAtRest(staticEffort(hinge, position), speedRatio(strut, position), strut);
    expect(significant(force, 5)).toBe(forceN);
  });

  it('travels 103.997 mm from 40° to 130°, a length ratio of 2.33 that no single rod drive does', () => {
    const shortestM = strutLengthM(strut, positionAt(40));
    const longestM = strutLengthM(strut, positionAt(130));
    expect(significant(1000 * (longestM - shortestM), 6)).toBe(103.997);
    expect(significant(longestM / shortestM, 3)).toBe(2.33);
  });

  it('does 4.160609 J over that travel, as much as the feature gains in height', () => {
    const count = 2000;
    let workJ = 0;
    for (let i = 0; i < count; i++) {
      const position = positionAt(40 + (90 * (i + 0.5)) / count);
      const from = strutLengthM(strut, positionAt(40 + (90 * i) / count));
      const to = strutLengthM(strut, positionAt(40 + (90 * (i + 1)) / count));
      workJ +=
        driveEffortAtRest(staticEffort(hinge, position), speedRatio(strut, position), strut) * (to - from);
    }
    expect(significant(workJ, 6)).toBe(4.16061);
    expect(significant(1.2 * 9.80665 * 0.25 * (2 * Math.sin(45 * degreeRad)), 7)).toBe(4.160609);
  });

  it('has the ratio and slope that its length gives by differences', () => {
    const step = 1e-5;
    for (const sideSign of [1, -1] as const) {
      const side = { ...strut, sideSign };
      for (let position = -0.7; position <= 0.7; position += 0.2) {
        const lower = strutLengthM(side, position - step);
        const upper = strutLengthM(side, position + step);
        const middle = strutLengthM(side, position);
        expect(speedRatio(side, position)).toBeCloseTo((upper - lower) / (2 * step), 8);
        expect(speedRatioSlope(side, position)).toBeCloseTo((upper - 2 * middle + lower) / step ** 2, 5);
      }
    }
  });

  it('has no moment arm at its dead centres', () => {
    expect(speedRatio(strut, positionAt(180))).toBeCloseTo(0, 12);
    expect(strutLengthM(strut, positionAt(180))).toBeCloseTo(0.2, 12);
    expect(strutLengthM(strut, positionAt(0))).toBeCloseTo(0.04, 12);
  });
});
