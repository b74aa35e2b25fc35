import { speedRatio } from '../physics/linkage.js';
import { staticEffort } from '../physics/load.js';
import type { CandidateModel } from './candidate-model.js';
import { unpoweredHoldingEffort } from './power-cut.js';

/** Nothing is crushed nearer to the hinge than this: a hand does not reach in. */
const nearestCrushM = 0.03;
const nearestCrushFraction = 0.1;

/** Forces at the tip that move the feature at a pose; null when it does not yield (it breaks first). */
export interface PushOutcome {
  downN: number;
  upN: number;
  unpoweredDownN: number | null;
  unpoweredUpN: number | null;
}

/** Push at the tip at a position, both ways, with and without power. */
export function pushAt(model: CandidateModel, position: number): PushOutcome {
  const { load, coupling, drive } = model;
  const ratio = Math.abs(speedRatio(coupling, position));
  const effort = staticEffort(load, position);
  const stalled = coupling.driveCount * ratio * drive.stallEffort;
  const frictional = coupling.driveCount * ratio * unpoweredHoldingEffort(model, false);
  const force = (resisting: number): number => Math.max(0, resisting / load.lengthM);
  const yields = Number.isFinite(frictional);
  return {
    downN: force(stalled - effort),
    upN: force(stalled + effort),
    unpoweredDownN: yields ? force(frictional - effort) : null,
    unpoweredUpN: yields ? force(frictional + effort) : null,
  };
}

/** Crush force of a stalled drive: near the hinge, and at the tip; the largest over the range. */
export function crushForces(model: CandidateModel): { nearN: number; tipN: number } {
  const { load, coupling, drive, range } = model;
  let ratio = 0;
  const points = 50;
  for (let i = 0; i <= points; i++) {
    const position = range.lowest + ((range.highest - range.lowest) * i) / points;
    ratio = Math.max(ratio, Math.abs(speedRatio(coupling, position)));
  }
  const effort = coupling.driveCount * ratio * drive.stallEffort;
  const nearM = load.isHinge ? Math.max(nearestCrushFraction * load.lengthM, nearestCrushM) : load.lengthM;
  return { nearN: effort / nearM, tipN: effort / load.lengthM };
}
