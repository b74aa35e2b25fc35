import { speedRatio } from '../physics/linkage.js';
import { type LoadParameters, staticEffort } from '../physics/load.js';
import type { CandidateModel } from './candidate-model.js';
import { unpoweredHoldingEffort } from './power-cut.js';

/** Nothing is crushed nearer to the hinge than this: a hand does not reach in. */
const nearestCrushM = 0.03;
const nearestCrushFraction = 0.1;

/** Steps of the range in which the longest moment arm is looked for: it is one smooth arch, missed by under a thousandth. */
const crushSteps = 50;

/** Forces at the tip that move the feature at a pose; null when it does not yield (it breaks first). */
export interface PushOutcome {
  downN: number | null;
  upN: number | null;
  unpoweredDownN: number | null;
  unpoweredUpN: number | null;
}

/**
 * Push at the tip at a position, both ways, with and without power.
 *
 * Power never makes a drive weaker: its motor resists up to stall, and where friction alone resists more, that
 * stays. So a drive that locks does not yield with power either, unless it was measured where it does.
 */
export function pushAt(model: CandidateModel, position: number): PushOutcome {
  const { load, coupling, drive } = model;
  const perDriveEffort = coupling.driveCount * Math.abs(speedRatio(coupling, position));
  const effort = staticEffort(load, position);
  const frictional = perDriveEffort * unpoweredHoldingEffort(model, false);
  const resisting = Math.max(frictional, perDriveEffort * drive.stallEffort);
  const force = (strength: number, withLoad: number): number | null =>
    Number.isFinite(strength) ? Math.max(0, (strength + withLoad) / load.lengthM) : null;
  return {
    downN: force(resisting, -effort),
    upN: force(resisting, effort),
    unpoweredDownN: force(frictional, -effort),
    unpoweredUpN: force(frictional, effort),
  };
}

/** How far from the hinge a hand is crushed; 1 on a slide, where the effort is the force. */
export const crushDistanceM = (load: LoadParameters): number =>
  load.isHinge ? Math.max(nearestCrushFraction * load.lengthM, nearestCrushM) : load.lengthM;

/** Crush force of a stalled drive: near the hinge, and at the tip; the largest over the range. */
export function crushForces(model: CandidateModel): { nearN: number; tipN: number } {
  const { load, coupling, drive, range } = model;
  let ratio = 0;
  for (let i = 0; i <= crushSteps; i++) {
    const position = range.lowest + ((range.highest - range.lowest) * i) / crushSteps;
    ratio = Math.max(ratio, Math.abs(speedRatio(coupling, position)));
  }
  const effort = coupling.driveCount * ratio * drive.stallEffort;
  return { nearN: effort / crushDistanceM(load), tipN: effort / load.lengthM };
}
