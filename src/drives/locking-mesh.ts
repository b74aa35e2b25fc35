import {
  lockingDriveBackward,
  meshBackwardEfficiency,
  shakenBackward,
  spurStagesEfficiency,
  staticBackward,
} from '../physics/gear-train.js';
import type { BackwardEfficiencies } from './drive-type.js';
import type { DriveSheet, TypicalFigures } from './sheet.js';

/**
 * Backward efficiencies of one locking mesh (worm or screw) behind spur stages. (M7)
 *
 * The loss of the locking mesh alone decides whether it locks, so the spur stages are taken out of the
 * forward efficiency first and put back afterwards.
 * @param forwardEfficiency of the whole drive, 0…1
 */
export function lockingMeshBackward(
  forwardEfficiency: number,
  sheet: DriveSheet,
  typical: TypicalFigures,
): BackwardEfficiencies {
  return ofMesh(Math.min(1, forwardEfficiency / spurStagesEfficiency), sheet, typical);
}

/**
 * The same when the running backward efficiency of the whole drive is stated: the locking mesh behind it decides. (M7)
 * @param running of the whole drive, at most 0.89, what the spur stages alone let back
 */
export function statedLockingMeshBackward(
  running: number,
  sheet: DriveSheet,
  typical: TypicalFigures,
): BackwardEfficiencies {
  const spurBackward = meshBackwardEfficiency(spurStagesEfficiency);
  const meshBackward = Math.min(1, running >= 0 ? running / spurBackward : running * spurStagesEfficiency);
  // η_b = 2 − 1/η_f of one mesh, solved for η_f.
  return { ...ofMesh(1 / (2 - meshBackward), sheet, typical), running };
}

function ofMesh(mesh: number, sheet: DriveSheet, typical: TypicalFigures): BackwardEfficiencies {
  const { staticFrictionRatio } = typical;
  return {
    running: lockingDriveBackward(staticBackward(mesh, 1)),
    standing: lockingDriveBackward(staticBackward(mesh, staticFrictionRatio)),
    shaken: lockingDriveBackward(shakenBackward(mesh, sheet.shakeRatio, staticFrictionRatio)),
  };
}
