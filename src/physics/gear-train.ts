import { power } from '../quantity/power.js';

/** Static over running friction of a mesh where nothing better is known; from memory. */
const defaultStaticRatio = 1.25;

/** Forward efficiency of the spur stages in front of a worm or screw, all of them together; from memory. */
export const spurStagesEfficiency = 0.9;

/**
 * Loss of a mesh over the power it passes on.
 * @param forwardEfficiency of the mesh, above 0
 * @returns 0 for a perfect mesh, over 1 for one that locks
 * @source meriam-kraige-dynamics, energy with friction; relation from memory, re-derived (M7)
 */
export function lossRatio(forwardEfficiency: number): number {
  return 1 / forwardEfficiency - 1;
}

/**
 * Backward efficiency of one mesh that loses the same friction in both directions: 2 − 1/η.
 * Negative when the mesh locks. Only ever for a single mesh: a train goes through `trainBackward`.
 * @param forwardEfficiency of this one mesh, above 0
 * @returns at most 1
 * @source meriam-kraige-dynamics, energy with friction; relation from memory, re-derived (M7)
 */
export function meshBackwardEfficiency(forwardEfficiency: number): number {
  return 1 - lossRatio(forwardEfficiency);
}

/**
 * Backward efficiency of a train of equal meshes; 0 as soon as one mesh passes nothing back.
 * @param meshForward of each mesh
 * @param meshCount at least 0
 * @returns 0…1
 * @source meriam-kraige-dynamics, power through stages in series (M7)
 */
export function trainBackward(meshForward: number, meshCount: number): number {
  return power(Math.max(0, meshBackwardEfficiency(meshForward)), meshCount);
}

/**
 * Backward efficiency of a drive whose last mesh may lock and whose first stages are spur gears.
 * A mesh that yields drives the spur stages backward; one that locks is driven forward through them.
 * @param meshBackward of the worm or screw mesh
 * @param spurForward forward efficiency of the spur stages together
 * @returns negative when the drive locks
 * @source meriam-kraige-dynamics, power through stages in series (M7)
 */
export function lockingDriveBackward(meshBackward: number, spurForward = spurStagesEfficiency): number {
  return meshBackward >= 0 ? meshBackward * meshBackwardEfficiency(spurForward) : meshBackward / spurForward;
}

/**
 * Backward efficiency of a mesh at rest, where friction is higher than in motion.
 * @param meshForward running forward efficiency of the mesh
 * @param staticRatio static over running friction, at least 1
 * @returns negative when the mesh locks at rest
 * @source meriam-kraige-dynamics, static and kinetic friction (M7)
 */
export function staticBackward(meshForward: number, staticRatio = defaultStaticRatio): number {
  return 1 - staticRatio * lossRatio(meshForward);
}

/**
 * Backward efficiency of a mesh at rest that is being shaken, which takes away a part of its static friction.
 * @param meshForward running forward efficiency of the mesh
 * @param shakeRatio share of the static friction that is left, 0…1
 * @param staticRatio static over running friction, at least 1
 * @returns negative when the mesh locks although it is shaken
 * @source meriam-kraige-dynamics, static and kinetic friction (M7)
 */
export function shakenBackward(
  meshForward: number,
  shakeRatio: number,
  staticRatio = defaultStaticRatio,
): number {
  return staticBackward(meshForward, shakeRatio * staticRatio);
}
