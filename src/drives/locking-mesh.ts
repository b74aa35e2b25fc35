import { lockingDriveBackward, shakenBackward, staticBackward } from '../physics/gear-train.js';
import type { BackwardEfficiencies } from './drive-type.js';
import type { DriveSheet, TypicalFigures } from './sheet.js';

/** Forward efficiency of the spur stages in front of a worm or screw, all together (from experience). */
const spurForward = 0.9;

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
  const mesh = Math.min(1, forwardEfficiency / spurForward);
  return {
    running: lockingDriveBackward(staticBackward(mesh, 1), spurForward),
    standing: lockingDriveBackward(staticBackward(mesh, typical.staticFrictionRatio), spurForward),
    shaken: lockingDriveBackward(
      shakenBackward(mesh, sheet.shakeRatio, typical.staticFrictionRatio),
      spurForward,
    ),
  };
}
