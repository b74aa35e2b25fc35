import type { CouplingParameters } from '../../src/physics/linkage.js';
import type { AssistSpring, LoadParameters } from '../../src/physics/load.js';

export const noSpring: AssistSpring = {
  form: 'none',
  stiffness: 0,
  freePosition: 0,
  constantEffort: 0,
  rateNPerM: 0,
  frameArmM: 0,
  featureArmM: 0,
  freeLengthM: 0,
};

/** A hinge of 1.2 kg that balances at 0.25 m, without friction, air and spring. */
export const hinge: LoadParameters = {
  isHinge: true,
  gravityEffort: 1.2 * 9.80665 * 0.25,
  leanRad: 0,
  inertia: 0.12,
  dragCoefficient: 0,
  frictionEffort: 0,
  gustEffort: 0,
  bounceFraction: 0,
  lengthM: 0.6,
  spring: noSpring,
};

/** A slender rod of 0.5 kg and 0.6 m, hinged at its end. */
export const rod: LoadParameters = {
  ...hinge,
  gravityEffort: 0.5 * 9.80665 * 0.3,
  inertia: (0.5 * 0.6 ** 2) / 3,
};

/** 2 kg on an upright rail. */
export const lift: LoadParameters = {
  ...hinge,
  isHinge: false,
  gravityEffort: 2 * 9.80665,
  inertia: 2,
  lengthM: 1,
};

export const direct: CouplingParameters = {
  kind: 'direct',
  fixedRatio: 1,
  efficiency: 1,
  driveCount: 1,
  frameArmM: 0,
  featureArmM: 0,
  levelAngleRad: 0,
  sideSign: 1,
};

/** Pivots at 120 mm on the frame and 80 mm on the feature; 85° between them when the feature is level. */
export const strut: CouplingParameters = {
  ...direct,
  kind: 'strut',
  frameArmM: 0.12,
  featureArmM: 0.08,
  levelAngleRad: (85 * Math.PI) / 180,
};
