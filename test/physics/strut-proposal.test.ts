import { describe, expect, it } from 'vitest';
import {
  type CouplingParameters,
  speedRatio,
  strutAngleRad,
  strutLengthM,
} from '../../src/physics/linkage.js';
import { proposeStrut, type StrutProposal, type StrutTask } from '../../src/physics/strut-proposal.js';
import { direct } from './samples.js';
import { degreeRad } from './units.js';

const task: StrutTask = {
  strokeM: 0.1,
  closedLengthM: 0.205,
  tipDistanceM: 0.6,
  lowestRad: -20 * degreeRad,
  highestRad: 50 * degreeRad,
  effort: (angleRad) => 2.942 * Math.cos(angleRad),
};
const unknownClosed = { ...task, closedLengthM: null };

const couplingOf = (proposal: StrutProposal): CouplingParameters => ({
  ...direct,
  kind: 'strut',
  frameArmM: proposal.frameArmM,
  featureArmM: proposal.featureArmM,
  levelAngleRad: proposal.levelAngleRad,
  sideSign: proposal.side === 'push' ? 1 : -1,
});

/** Angles, lengths, arms and force of a linkage over its travel, by the functions of the linkage. */
function along(coupling: CouplingParameters, job: StrutTask) {
  const positions = Array.from(
    { length: 181 },
    (_, i) => job.lowestRad + ((job.highestRad - job.lowestRad) * i) / 180,
  );
  const arms = positions.map((position) => Math.abs(speedRatio(coupling, position)));
  return {
    anglesDeg: positions.map((position) => strutAngleRad(coupling, position) / degreeRad),
    lengthsM: positions.map((position) => strutLengthM(coupling, position)),
    smallestArmM: Math.min(...arms),
    peakForceN: Math.max(...positions.map((position, i) => Math.abs(job.effort(position)) / arms[i]!)),
  };
}

/** Whether a linkage keeps to the limits that a proposal promises. */
function keepsLimits(coupling: CouplingParameters, job: StrutTask): boolean {
  const { anglesDeg, lengthsM, smallestArmM } = along(coupling, job);
  const shortestM = Math.min(...lengthsM);
  const longestM = Math.max(...lengthsM);
  const spareM = 0.025 * job.strokeM;
  const fits =
    job.closedLengthM === null
      ? longestM <= 1.6 * shortestM
      : shortestM >= job.closedLengthM + spareM && longestM <= job.closedLengthM + job.strokeM - spareM;
  return (
    fits &&
    longestM - shortestM <= 0.95 * job.strokeM &&
    smallestArmM >= 0.1 * Math.min(coupling.frameArmM, coupling.featureArmM) &&
    Math.min(...anglesDeg) >= 5 - 1e-6 &&
    Math.max(...anglesDeg) <= 175 + 1e-6
  );
}

describe.each([
  ['a strut of known closed length', task],
  ['a strut of unknown closed length', unknownClosed],
])('the pivots proposed for %s', (_, job) => {
  const proposal = proposeStrut(job)!;

  it('keep to the stroke, the moment arm and the angles', () => {
    expect(keepsLimits(couplingOf(proposal), job)).toBe(true);
  });

  it('are whole millimetres and degrees, from 20 mm to the tip', () => {
    for (const armM of [proposal.frameArmM, proposal.featureArmM]) {
      expect(armM * 1000).toBeCloseTo(Math.round(armM * 1000), 9);
      expect(armM).toBeGreaterThanOrEqual(0.02);
      expect(armM).toBeLessThanOrEqual(0.6);
    }
    const levelDeg = proposal.levelAngleRad / degreeRad;
    expect(levelDeg).toBeCloseTo(Math.round(levelDeg), 9);
  });

  it('carry the force that virtual work gives', () => {
    expect(along(couplingOf(proposal), job).peakForceN).toBeCloseTo(proposal.peakForceN, 2);
  });

  it('are not beaten by more than a hundredth by ten thousand others', () => {
    // A fixed sequence of pseudo-random pivots (multiplicative congruential; multiplier of Park, Miller & Stockmeyer 1993, from memory).
    let seed = 12345;
    const next = () => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 10_000; i++) {
      const coupling: CouplingParameters = {
        ...direct,
        kind: 'strut',
        frameArmM: 0.02 * 30 ** next(),
        featureArmM: 0.02 * 30 ** next(),
        levelAngleRad: (-60 + 300 * next()) * degreeRad,
        sideSign: next() < 0.5 ? 1 : -1,
      };
      const ends = [job.lowestRad, job.highestRad].map((position) => strutLengthM(coupling, position));
      if (Math.abs(ends[1]! - ends[0]!) > job.strokeM || !keepsLimits(coupling, job)) continue;
      least = Math.min(least, along(coupling, job).peakForceN);
    }
    expect(least).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(proposal.peakForceN).toBeLessThanOrEqual(1.01 * least);
  });

  it('are the same when they are proposed again', () => {
    expect(proposeStrut(job)).toEqual(proposal);
  });
});

describe('a proposal of pivots', () => {
  it('needs less force from a longer stroke', () => {
    const longer = proposeStrut({ ...unknownClosed, strokeM: 0.15 })!;
    expect(longer.peakForceN).toBeLessThan(proposeStrut(unknownClosed)!.peakForceN);
  });

  it('does not exist for a drive that is longer than the feature', () => {
    expect(proposeStrut({ ...task, closedLengthM: 1.5 })).toBeNull();
  });

  it('does not exist for a stroke of nothing, a travel of half a turn, or a feature too short for a pivot', () => {
    expect(proposeStrut({ ...task, strokeM: 0 })).toBeNull();
    expect(proposeStrut({ ...task, lowestRad: -90 * degreeRad, highestRad: 90 * degreeRad })).toBeNull();
    expect(proposeStrut({ ...task, tipDistanceM: 0.015 })).toBeNull();
  });

  it('never asks for less than work over stroke, which is the best that any linkage can do', () => {
    const workJ = 2.942 * (Math.sin(50 * degreeRad) + Math.sin(20 * degreeRad));
    expect(proposeStrut(unknownClosed)!.peakForceN).toBeGreaterThan(workJ / (0.95 * 0.1));
  });
});
