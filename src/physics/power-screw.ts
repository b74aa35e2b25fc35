/**
 * Torque that turns a screw against its load.
 * Infinite where friction alone would jam the thread.
 * @param forceN load along the screw
 * @param meanDiameterM mean (pitch) diameter of the thread
 * @param leadM advance per turn: pitch × starts
 * @param frictionCoefficient in the thread
 * @param flankAngleRad half the thread angle in the axial plane: 0 square, 15° trapezoidal
 * @param collarFrictionCoefficient 0 when a ball bearing takes the thrust
 * @param collarDiameterM mean diameter of the collar
 * @returns N·m
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function raiseTorqueNm(
  forceN: number,
  meanDiameterM: number,
  leadM: number,
  frictionCoefficient: number,
  flankAngleRad: number,
  collarFrictionCoefficient: number,
  collarDiameterM: number,
): number {
  const wedged = frictionCoefficient / Math.cos(flankAngleRad);
  const turn = Math.PI * meanDiameterM;
  const thread = (((forceN * meanDiameterM) / 2) * (leadM + wedged * turn)) / (turn - wedged * leadM);
  return thread + (forceN * collarFrictionCoefficient * collarDiameterM) / 2;
}

/**
 * Torque that turns a screw along with its load; negative when the load turns the screw by itself.
 * @param forceN load along the screw
 * @param meanDiameterM mean (pitch) diameter of the thread
 * @param leadM advance per turn: pitch × starts
 * @param frictionCoefficient in the thread
 * @param flankAngleRad half the thread angle in the axial plane
 * @param collarFrictionCoefficient 0 when a ball bearing takes the thrust
 * @param collarDiameterM mean diameter of the collar
 * @returns N·m
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function lowerTorqueNm(
  forceN: number,
  meanDiameterM: number,
  leadM: number,
  frictionCoefficient: number,
  flankAngleRad: number,
  collarFrictionCoefficient: number,
  collarDiameterM: number,
): number {
  const wedged = frictionCoefficient / Math.cos(flankAngleRad);
  const turn = Math.PI * meanDiameterM;
  const thread = (((forceN * meanDiameterM) / 2) * (wedged * turn - leadM)) / (turn + wedged * leadM);
  return thread + (forceN * collarFrictionCoefficient * collarDiameterM) / 2;
}

/**
 * Efficiency of a screw that drives its load; of the thread alone unless a collar is given.
 * @param meanDiameterM mean (pitch) diameter of the thread
 * @param leadM advance per turn
 * @param frictionCoefficient in the thread
 * @param flankAngleRad half the thread angle in the axial plane
 * @param collarFrictionCoefficient of a plain thrust collar
 * @param collarDiameterM mean diameter of the collar
 * @returns 1 without friction
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function screwForwardEfficiency(
  meanDiameterM: number,
  leadM: number,
  frictionCoefficient: number,
  flankAngleRad: number,
  collarFrictionCoefficient = 0,
  collarDiameterM = 0,
): number {
  const torquePerNewtonNm = raiseTorqueNm(
    1,
    meanDiameterM,
    leadM,
    frictionCoefficient,
    flankAngleRad,
    collarFrictionCoefficient,
    collarDiameterM,
  );
  return leadM / (2 * Math.PI * torquePerNewtonNm);
}

/**
 * Efficiency of a load that drives its screw; of the thread alone unless a collar is given.
 * 0 where it just locks, negative beyond. Locking is judged on the thread alone.
 * @param meanDiameterM mean (pitch) diameter of the thread
 * @param leadM advance per turn
 * @param frictionCoefficient in the thread
 * @param flankAngleRad half the thread angle in the axial plane
 * @param collarFrictionCoefficient of a plain thrust collar
 * @param collarDiameterM mean diameter of the collar
 * @returns 1 without friction
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function screwBackwardEfficiency(
  meanDiameterM: number,
  leadM: number,
  frictionCoefficient: number,
  flankAngleRad: number,
  collarFrictionCoefficient = 0,
  collarDiameterM = 0,
): number {
  const torquePerNewtonNm = lowerTorqueNm(
    1,
    meanDiameterM,
    leadM,
    frictionCoefficient,
    flankAngleRad,
    collarFrictionCoefficient,
    collarDiameterM,
  );
  return (-2 * Math.PI * torquePerNewtonNm) / leadM;
}

/**
 * Smallest friction at which the load cannot turn the screw, thread alone.
 * @param meanDiameterM mean (pitch) diameter of the thread
 * @param leadM advance per turn
 * @param flankAngleRad half the thread angle in the axial plane
 * @source shigley, section 8-2, condition of self-locking (M9)
 */
export function screwLockingFriction(meanDiameterM: number, leadM: number, flankAngleRad: number): number {
  return (leadM * Math.cos(flankAngleRad)) / (Math.PI * meanDiameterM);
}
