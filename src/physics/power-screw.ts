/** A screw and what takes its thrust. */
export interface Thread {
  /** Mean (pitch) diameter. */
  meanDiameterM: number;
  /** Advance per turn: pitch × starts. */
  leadM: number;
  /** In the thread. */
  frictionCoefficient: number;
  /** Half the thread angle in the axial plane: 0 square, 15° trapezoidal. */
  flankAngleRad: number;
  /** Plain thrust collar; left out for the thread alone, and where a ball bearing takes the thrust. */
  collar?: {
    frictionCoefficient: number;
    meanDiameterM: number;
  };
}

/**
 * Torque that turns a screw against its load.
 * Infinite where friction alone would jam the thread.
 * @param forceN load along the screw
 * @param thread the screw, with its collar if it has one
 * @returns N·m
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function raiseTorqueNm(forceN: number, thread: Thread): number {
  const { leadM, meanDiameterM } = thread;
  const { wedged, turn } = unrolled(thread);
  const threadNm = (((forceN * meanDiameterM) / 2) * (leadM + wedged * turn)) / (turn - wedged * leadM);
  return threadNm + collarTorqueNm(forceN, thread);
}

/**
 * Torque that turns a screw along with its load; negative when the load turns the screw by itself.
 * @param forceN load along the screw
 * @param thread the screw, with its collar if it has one
 * @returns N·m
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function lowerTorqueNm(forceN: number, thread: Thread): number {
  const { leadM, meanDiameterM } = thread;
  const { wedged, turn } = unrolled(thread);
  const threadNm = (((forceN * meanDiameterM) / 2) * (wedged * turn - leadM)) / (turn + wedged * leadM);
  return threadNm + collarTorqueNm(forceN, thread);
}

/** Friction as the flanks wedge it, and the length of one turn. */
function unrolled({ frictionCoefficient, flankAngleRad, meanDiameterM }: Thread) {
  return { wedged: frictionCoefficient / Math.cos(flankAngleRad), turn: Math.PI * meanDiameterM };
}

function collarTorqueNm(forceN: number, { collar }: Thread): number {
  return collar === undefined ? 0 : (forceN * collar.frictionCoefficient * collar.meanDiameterM) / 2;
}

/**
 * Efficiency of a screw that drives its load; of the thread alone unless it has a collar.
 * @param thread the screw, with its collar if it has one
 * @returns 1 without friction
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function screwForwardEfficiency(thread: Thread): number {
  return thread.leadM / (2 * Math.PI * raiseTorqueNm(1, thread));
}

/**
 * Efficiency of a load that drives its screw; of the thread alone unless it has a collar.
 * 0 where it just locks, negative beyond. Locking is judged on the thread alone.
 * @param thread the screw, with its collar if it has one
 * @returns 1 without friction
 * @source shigley, section 8-2, mechanics of power screws (M9)
 */
export function screwBackwardEfficiency(thread: Thread): number {
  return (-2 * Math.PI * lowerTorqueNm(1, thread)) / thread.leadM;
}
