/** How one drive is joined to the feature. Drive coordinate q, feature coordinate x, ratio u = dq/dx. */
export interface CouplingParameters {
  kind: 'direct' | 'geared' | 'spool' | 'strut';
  /** u of every kind but the strut: 1, the gear ratio, or 1 / spool radius. */
  fixedRatio: number;
  efficiency: number;
  /** Drives that share one feature. */
  driveCount: number;
  /** Strut: hinge to its pivot on the frame. */
  frameArmM: number;
  /** Strut: hinge to its pivot on the feature. */
  featureArmM: number;
  /** Strut: angle between the two arms when the feature is level. */
  levelAngleRad: number;
  /** Strut: +1 lengthens as the feature rises (push), −1 shortens (pull). */
  sideSign: 1 | -1;
}

/**
 * Angle between the two arms of a strut.
 * @param coupling a strut
 * @param position of the feature, rad from level
 * @returns rad; 0 and π are its dead centres
 * @source meriam-kraige-dynamics, geometry of the triangle (M4)
 */
export function strutAngleRad(coupling: CouplingParameters, position: number): number {
  return coupling.levelAngleRad + coupling.sideSign * position;
}

/**
 * Distance between the two pivots of a strut.
 * @param coupling a strut
 * @param position of the feature, rad from level
 * @returns m
 * @source meriam-kraige-dynamics, law of cosines (M4)
 */
export function strutLengthM(coupling: CouplingParameters, position: number): number {
  const a = coupling.frameArmM;
  const b = coupling.featureArmM;
  return Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(strutAngleRad(coupling, position)));
}

/**
 * Travel of the drive per travel of the feature, u = dq/dx.
 * For a strut it is the moment arm, negative on the pull side and 0 at a dead centre.
 * @param coupling how drive and feature are joined
 * @param position of the feature, rad or m
 * @returns 1, a ratio, 1/m or m/rad
 * @source meriam-kraige-dynamics, virtual work (M3, M4)
 */
export function speedRatio(coupling: CouplingParameters, position: number): number {
  if (coupling.kind !== 'strut') return coupling.fixedRatio;
  const angleRad = strutAngleRad(coupling, position);
  const a = coupling.frameArmM;
  const b = coupling.featureArmM;
  const lengthM = Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angleRad));
  return (coupling.sideSign * a * b * Math.sin(angleRad)) / lengthM;
}

/**
 * Change of the ratio with position, u′ = d²q/dx²; 0 for every kind but the strut.
 * @param coupling how drive and feature are joined
 * @param position of the feature, rad or m
 * @returns m/rad² for a strut
 * @source meriam-kraige-dynamics, derivative of the law of cosines (M3, M4)
 */
export function speedRatioSlope(coupling: CouplingParameters, position: number): number {
  if (coupling.kind !== 'strut') return 0;
  const angleRad = strutAngleRad(coupling, position);
  const product = coupling.frameArmM * coupling.featureArmM;
  const cosine = Math.cos(angleRad);
  const squared =
    coupling.frameArmM * coupling.frameArmM +
    coupling.featureArmM * coupling.featureArmM -
    2 * product * cosine;
  const lengthM = Math.sqrt(squared);
  const arm = (product * Math.sin(angleRad)) / lengthM;
  return (product * cosine - arm * arm) / lengthM;
}

/**
 * Effort of one drive that pushes the load: the coupling's loss is on the drive's side.
 * Infinite at a dead centre.
 * @param effort of the feature, all its drives together
 * @param ratio u at this position
 * @param coupling for its efficiency and number of drives
 * @returns N·m or N in the drive's own motion
 * @source meriam-kraige-dynamics, virtual work (M3)
 */
export function driveEffortPushing(effort: number, ratio: number, coupling: CouplingParameters): number {
  return effort / (coupling.driveCount * ratio * coupling.efficiency);
}

/**
 * Effort of one drive that the load pushes: the coupling's loss helps to hold it.
 * @param effort of the feature, all its drives together
 * @param ratio u at this position
 * @param coupling for its efficiency and number of drives
 * @returns N·m or N in the drive's own motion
 * @source meriam-kraige-dynamics, virtual work (M3)
 */
export function driveEffortYielding(effort: number, ratio: number, coupling: CouplingParameters): number {
  return (effort * coupling.efficiency) / (coupling.driveCount * ratio);
}

/**
 * Effort of one drive at rest: no loss either way.
 * @param effort of the feature, all its drives together
 * @param ratio u at this position
 * @param coupling for its number of drives
 * @returns N·m or N in the drive's own motion
 * @source meriam-kraige-dynamics, virtual work (M3)
 */
export function driveEffortAtRest(effort: number, ratio: number, coupling: CouplingParameters): number {
  return effort / (coupling.driveCount * ratio);
}

/**
 * Effort of one drive in motion: pushing when effort and velocity agree, yielding when they oppose.
 * At velocity 0 or effort 0 it counts as pushing.
 * @param effort of the feature, all its drives together
 * @param velocity of the feature towards +
 * @param ratio u at this position
 * @param coupling for its efficiency and number of drives
 * @returns N·m or N in the drive's own motion
 * @source meriam-kraige-dynamics, virtual work (M3)
 */
export function driveEffortMoving(
  effort: number,
  velocity: number,
  ratio: number,
  coupling: CouplingParameters,
): number {
  return effort * velocity >= 0
    ? driveEffortPushing(effort, ratio, coupling)
    : driveEffortYielding(effort, ratio, coupling);
}
