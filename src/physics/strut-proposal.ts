import { power } from '../quantity/power.js';
/** What a strut has to do, and what is known of the drive that is meant to do it. */
export interface StrutTask {
  /** Travel of the drive. */
  strokeM: number;
  /** Pivot to pivot with the drive drawn in; null when not known. */
  closedLengthM: number | null;
  /** Hinge to tip; no pivot sits further out. */
  tipDistanceM: number;
  lowestRad: number;
  highestRad: number;
  /** Static effort that the strut must bear at an angle, N·m. */
  effort: (angleRad: number) => number;
}

/** Pivots that a maker can build: whole millimetres and whole degrees. */
export interface StrutProposal {
  frameArmM: number;
  featureArmM: number;
  levelAngleRad: number;
  side: 'push' | 'pull';
  /** Largest static force over the travel. */
  peakForceN: number;
}

/** Limits of a sensible linkage; common practice. */
const usableStrokeFraction = 0.95;
const largestLengthRatio = 1.6;
const smallestMomentArmFraction = 0.1;
const smallestAngleDeg = 5;
const largestAngleDeg = 175;
const smallestArmMm = 20;

/** Fineness of the search: arms and angles of the coarse grid, angles at which the force is looked at. */
const gridArmCount = 14;
const gridAngleStepDeg = 6;
const coarseSampleCount = 13;
const fineSampleCount = 121;
/** Best grid points that are refined, and the refinement's steps in mm and degrees. */
const startCount = 24;
const refinementSteps = [16, 8, 4, 2, 1] as const;

const radPerDeg = Math.PI / 180;

/** A strut in the units of the search. */
interface Trial {
  frameMm: number;
  featureMm: number;
  levelDeg: number;
  sideSign: 1 | -1;
  forceN: number;
}

/** Angles and efforts along the travel, so that the effort is asked for once. */
interface Samples {
  anglesRad: Float64Array;
  efforts: Float64Array;
}

/**
 * Pivots for a drive of known stroke with the least peak force over the travel.
 * Every proposal keeps to 95 % of the stroke in the middle of it (or, with the closed length unknown, to a
 * length ratio of 1.6), to a moment arm of a tenth of the smaller arm and to 5…175° between the arms.
 * The search is deterministic: a coarse grid, then steps of whole millimetres and degrees from its best
 * points.
 * @param task stroke, angles and effort
 * @returns null when no linkage fits
 * @source meriam-kraige-dynamics, law of cosines and virtual work (M4)
 */
export function proposeStrut(task: StrutTask): StrutProposal | null {
  if (!(task.strokeM > 0) || !(task.tipDistanceM * 1000 >= smallestArmMm)) return null;
  const coarse = samplesOf(task, coarseSampleCount);
  const fine = samplesOf(task, fineSampleCount);
  let best: Trial | null = null;
  for (const start of bestOfGrid(task, coarse)) {
    const refined = refine(task, fine, start);
    if (refined.forceN < (best?.forceN ?? Number.POSITIVE_INFINITY)) best = refined;
  }
  if (best === null) return null;
  return {
    frameArmM: best.frameMm / 1000,
    featureArmM: best.featureMm / 1000,
    levelAngleRad: best.levelDeg * radPerDeg,
    side: best.sideSign === 1 ? 'push' : 'pull',
    peakForceN: best.forceN,
  };
}

function samplesOf(task: StrutTask, count: number): Samples {
  const anglesRad = new Float64Array(count);
  const efforts = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const angleRad = task.lowestRad + ((task.highestRad - task.lowestRad) * i) / (count - 1);
    anglesRad[i] = angleRad;
    efforts[i] = task.effort(angleRad);
  }
  return { anglesRad, efforts };
}

/** The best points of the coarse grid that keep to every limit, in order of their force. */
function bestOfGrid(task: StrutTask, samples: Samples): Trial[] {
  const kept: Trial[] = [];
  const armsMm = gridArmsMm(task.tipDistanceM);
  for (const sideSign of [1, -1] as const) {
    for (const frameMm of armsMm) {
      for (const featureMm of armsMm) {
        for (let levelDeg = -180; levelDeg <= 360; levelDeg += gridAngleStepDeg) {
          const trial: Trial = { frameMm, featureMm, levelDeg, sideSign, forceN: 0 };
          trial.forceN = peakForceN(task, samples, trial);
          const worst = kept[startCount - 1];
          if (trial.forceN === Number.POSITIVE_INFINITY) continue;
          if (worst !== undefined && trial.forceN >= worst.forceN) continue;
          kept.push(trial);
          kept.sort((one, other) => one.forceN - other.forceN);
          if (kept.length > startCount) kept.pop();
        }
      }
    }
  }
  return kept;
}

/** Arms of the grid in whole mm, closer together where they are short. */
function gridArmsMm(tipDistanceM: number): number[] {
  const largestMm = Math.floor(tipDistanceM * 1000 + 1e-9);
  const armsMm = new Set<number>();
  for (let i = 0; i < gridArmCount; i++) {
    armsMm.add(Math.round(smallestArmMm * power(largestMm / smallestArmMm, i / (gridArmCount - 1))));
  }
  return [...armsMm];
}

/** Steps to the best neighbour until none is better, with ever smaller steps. */
function refine(task: StrutTask, samples: Samples, start: Trial): Trial {
  let best: Trial = { ...start, forceN: peakForceN(task, samples, start) };
  for (const step of refinementSteps) {
    const degStep = Math.max(1, Math.round(step / 4));
    for (let better = true; better; ) {
      better = false;
      const centre = best;
      for (let neighbour = 0; neighbour < 27; neighbour++) {
        const trial: Trial = {
          frameMm: centre.frameMm + step * ((neighbour % 3) - 1),
          featureMm: centre.featureMm + step * ((Math.floor(neighbour / 3) % 3) - 1),
          levelDeg: centre.levelDeg + degStep * (Math.floor(neighbour / 9) - 1),
          sideSign: centre.sideSign,
          forceN: 0,
        };
        trial.forceN = peakForceN(task, samples, trial);
        if (trial.forceN < best.forceN * (1 - 1e-12)) {
          best = trial;
          better = true;
        }
      }
    }
  }
  return best;
}

/** Largest static force over the travel; infinite for a linkage that breaks one of the limits. */
function peakForceN(task: StrutTask, samples: Samples, trial: Trial): number {
  const a = trial.frameMm / 1000;
  const b = trial.featureMm / 1000;
  if (trial.frameMm < smallestArmMm || trial.featureMm < smallestArmMm) return Number.POSITIVE_INFINITY;
  if (Math.max(a, b) > task.tipDistanceM + 1e-9) return Number.POSITIVE_INFINITY;
  const levelRad = trial.levelDeg * radPerDeg;
  const oneRad = levelRad + trial.sideSign * task.lowestRad;
  const otherRad = levelRad + trial.sideSign * task.highestRad;
  const smallestRad = Math.min(oneRad, otherRad);
  const largestRad = Math.max(oneRad, otherRad);
  if (smallestRad < smallestAngleDeg * radPerDeg - 1e-9) return Number.POSITIVE_INFINITY;
  if (largestRad > largestAngleDeg * radPerDeg + 1e-9) return Number.POSITIVE_INFINITY;
  // Between the dead centres the length grows with the angle, and the moment arm is least at an end.
  const shortestM = lengthM(a, b, smallestRad);
  const longestM = lengthM(a, b, largestRad);
  if (!fitsStroke(task, shortestM, longestM)) return Number.POSITIVE_INFINITY;
  const endArmM = Math.min(
    (a * b * Math.sin(smallestRad)) / shortestM,
    (a * b * Math.sin(largestRad)) / longestM,
  );
  if (endArmM < smallestMomentArmFraction * Math.min(a, b)) return Number.POSITIVE_INFINITY;
  let peakN = 0;
  for (let i = 0; i < samples.efforts.length; i++) {
    const angleRad = levelRad + trial.sideSign * samples.anglesRad[i]!;
    const armM = (a * b * Math.sin(angleRad)) / lengthM(a, b, angleRad);
    peakN = Math.max(peakN, Math.abs(samples.efforts[i]!) / armM);
  }
  return peakN;
}

function lengthM(a: number, b: number, angleRad: number): number {
  return Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angleRad));
}

function fitsStroke(task: StrutTask, shortestM: number, longestM: number): boolean {
  if (longestM - shortestM > usableStrokeFraction * task.strokeM) return false;
  if (task.closedLengthM === null) return longestM <= largestLengthRatio * shortestM;
  const spareM = ((1 - usableStrokeFraction) / 2) * task.strokeM;
  return shortestM >= task.closedLengthM + spareM && longestM <= task.closedLengthM + task.strokeM - spareM;
}
