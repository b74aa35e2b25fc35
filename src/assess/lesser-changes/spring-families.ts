import type { LoadParameters } from '../../physics/load.js';
import { type AssistSpring, noSpring } from '../../study/feature.js';
import type { SpringBench } from './spring-bench.js';
import type { SpringFamily } from './spring-search.js';

/** A torsion spring is wound up by at most half a turn beyond the travel (from experience). */
const mostWindRad = Math.PI;

/** A spring along a rail is stretched by at most three travels beyond the travel (from experience). */
const mostTravels = 3;

/** A spring is slack at least so far from where it is tightest; rad or m. */
const leastDistance = 1e-3;

/** No spring need be stronger than this times the load it carries. */
const mostStrength = 1.2;

/**
 * Torsion springs on a hinge, springs along a rail: first the effort at the lowest cue position, then how far
 * beyond the highest they go slack. They push upwards over the whole range.
 */
export function linearFamily({ model: { load, range }, largestGravity }: SpringBench): SpringFamily {
  const travel = range.highest - range.lowest;
  const beyond = load.isHinge ? mostWindRad : mostTravels * travel;
  const strongest = mostStrength * largestGravity;
  return {
    firstCount: 11,
    secondCount: 7,
    springAt(first, second) {
      const distance = Math.max(leastDistance, travel + second * beyond);
      const stiffness = (first * strongest) / distance;
      return { ...noSpring, form: 'linear', stiffness, freePosition: range.lowest + distance };
    },
  };
}

/** Arms of an anchored coil as a share of hinge to tip, when nothing else is known (from experience). */
const armFraction = 0.25;

/** Arms are measured with a ruler. */
const armStepM = 0.005;

/** Height of the anchor above the hinge, and distance of the hook along the feature. */
function coilArmM(tipDistanceM: number): number {
  return Math.max(armStepM, Math.round((armFraction * tipDistanceM) / armStepM) * armStepM);
}

/**
 * Coil springs from an anchor straight above the hinge, by their rate: led over an eyelet at the anchor, so that
 * they are slack where anchor and hook would meet (free length 0).
 */
export function coilFamily({ largestGravity }: SpringBench, tipDistanceM: number): SpringFamily {
  const armM = coilArmM(tipDistanceM);
  const strongest = mostStrength * largestGravity;
  return {
    firstCount: 21,
    secondCount: 1,
    springAt: (first) => ({
      ...noSpring,
      form: 'coil',
      rateNPerM: (first * strongest) / (armM * armM),
      frameArmM: armM,
      featureArmM: armM,
    }),
  };
}

/** The coil that balances the feature at every angle when its carrier stands upright: k·a·b = m·g·r. (M1) */
export function balancingCoil(load: LoadParameters, tipDistanceM: number): AssistSpring {
  const armM = coilArmM(tipDistanceM);
  const rateNPerM = load.gravityEffort / (armM * armM);
  return { ...noSpring, form: 'coil', rateNPerM, frameArmM: armM, featureArmM: armM };
}
