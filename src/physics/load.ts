import { airDensityKgPerM3, flatPlateDragCoefficient, standardGravityMPerS2 } from './constants.js';

/**
 * An assist spring, flat so that any number can be drawn from its spread.
 * Efforts and positions in N·m and rad on a hinge, N and m on a slide.
 */
export interface AssistSpring {
  form: 'none' | 'linear' | 'constant' | 'coil';
  /** `linear`: N·m/rad or N/m. */
  stiffness: number;
  /** `linear`: position at which it pushes nothing. */
  freePosition: number;
  /** `constant`: effort towards +. */
  constantEffort: number;
  /** `coil`, hinge only: from an anchor straight above the hinge to a point along the feature. */
  rateNPerM: number;
  frameArmM: number;
  featureArmM: number;
  freeLengthM: number;
}

/** What one feature asks of its drives; efforts in N·m on a hinge and N on a slide. */
export interface LoadParameters {
  isHinge: boolean;
  /** Hinge: m·g·r·cos(tilt), in N·m; slide: m·g·sin(incline), in N. */
  gravityEffort: number;
  /** Lean of the carrier that raises the feature; hinge only. */
  leanRad: number;
  /** kg·m² about the hinge, or kg. */
  inertia: number;
  /** Effort per speed². */
  dragCoefficient: number;
  /** Acts while the feature moves. */
  frictionEffort: number;
  /** Effort of the worst gust; peak checks only. */
  gustEffort: number;
  /** Share of gravity that walking adds and takes away; peak checks only. */
  bounceFraction: number;
  /** Hinge to tip; 1 on a slide, so that effort / length is a force. */
  lengthM: number;
  spring: AssistSpring;
}

/** Body used to estimate an inertia. */
export type BodyShape = 'rod' | 'panel' | 'point' | 'unknown';

/** Inertia over m·r² of a feature of unknown shape: that of a slender rod, 4/3; from memory. */
const unknownShapeInertiaRatio = 1.33;

/**
 * Effort of gravity alone, positive when the drive must push towards +.
 * Largest on a level hinge, zero when the feature stands upright, the same all along a slide.
 * @param load the feature
 * @param position rad from level, or m
 * @returns N·m or N
 * @source meriam-kraige-dynamics, moment of a force (M1, M2)
 */
export function gravityEffortAt(load: LoadParameters, position: number): number {
  return load.isHinge ? load.gravityEffort * Math.cos(position + load.leanRad) : load.gravityEffort;
}

/**
 * Effort of the assist spring, positive when it pushes towards +.
 * A coil that is shorter than its free length hangs slack: it pulls, never pushes.
 * @param spring the spring
 * @param position rad from level, or m
 * @returns N·m or N
 * @source meriam-kraige-dynamics, law of cosines and virtual work of a spring (M1, M2)
 */
export function springEffort(spring: AssistSpring, position: number): number {
  switch (spring.form) {
    case 'none':
      return 0;
    case 'linear':
      return spring.stiffness * (spring.freePosition - position);
    case 'constant':
      return spring.constantEffort;
    case 'coil': {
      const product = spring.frameArmM * spring.featureArmM;
      const full = spring.rateNPerM * product * Math.cos(position);
      if (spring.freeLengthM === 0) return full;
      const squared =
        spring.frameArmM * spring.frameArmM +
        spring.featureArmM * spring.featureArmM -
        2 * product * Math.sin(position);
      if (squared <= spring.freeLengthM * spring.freeLengthM) return 0;
      return full * (1 - spring.freeLengthM / Math.sqrt(squared));
    }
  }
}

/**
 * Effort that holds the feature still: gravity less the spring, without friction.
 * @param load the feature
 * @param position rad from level, or m
 * @returns N·m or N, positive when the drive must push towards +
 * @source meriam-kraige-dynamics, equilibrium (M1, M2)
 */
export function staticEffort(load: LoadParameters, position: number): number {
  return gravityEffortAt(load, position) - springEffort(load.spring, position);
}

/**
 * Effort that moves the feature: static effort, inertia, drag of the air and friction.
 * @param load the feature
 * @param stillEffort from `staticEffort` at the position: whoever asks for many speeds works it out once
 * @param speed towards +
 * @param acceleration towards +
 * @param direction of the move, +1 or −1, which is that of the friction also where the speed is still 0
 * @returns N·m or N, positive when the drive must push towards +
 * @source meriam-kraige-dynamics, rotation about a fixed axis (M1, M2)
 */
export function movingEffort(
  load: LoadParameters,
  stillEffort: number,
  speed: number,
  acceleration: number,
  direction: number,
): number {
  return (
    stillEffort +
    load.inertia * acceleration +
    load.dragCoefficient * speed * Math.abs(speed) +
    load.frictionEffort * direction
  );
}

/**
 * The static effort of largest magnitude under friction, gust and walking, each in its worst direction.
 * @param load the feature
 * @param position rad from level, or m
 * @returns N·m or N with its sign; the positive one when both directions are equally bad
 * @source meriam-kraige-dynamics, equilibrium (M1, M2)
 */
export function peakEffort(load: LoadParameters, position: number): number {
  const gravity = gravityEffortAt(load, position);
  const spring = springEffort(load.spring, position);
  const bounce = Math.abs(gravity) * load.bounceFraction;
  const either = load.frictionEffort + load.gustEffort;
  const highest = gravity + bounce - spring + either;
  const lowest = gravity - bounce - spring - either;
  return highest >= -lowest ? highest : lowest;
}

/**
 * Inertia of the feature about its hinge, estimated from its shape.
 * @param shape slender rod from the hinge, panel hinged on its edge, point mass, or unknown
 * @param massKg at least 0
 * @param balanceDistanceM hinge to balance point; counts for point and unknown
 * @param tipDistanceM hinge to tip; counts for rod and panel
 * @returns kg·m²
 * @source meriam-kraige-dynamics, table of moments of inertia (M1); the unknown shape from memory
 */
export function bodyInertia(
  shape: BodyShape,
  massKg: number,
  balanceDistanceM: number,
  tipDistanceM: number,
): number {
  switch (shape) {
    case 'rod':
    case 'panel':
      return (massKg * tipDistanceM * tipDistanceM) / 3;
    case 'point':
      return massKg * balanceDistanceM * balanceDistanceM;
    case 'unknown':
      return unknownShapeInertiaRatio * massKg * balanceDistanceM * balanceDistanceM;
  }
}

/**
 * Drag of a rectangle that swings about one edge: torque per angular speed².
 * The air speed grows with the distance from the hinge, which gives the quarter of length³.
 * @param areaM2 of the rectangle
 * @param lengthM hinge to tip
 * @returns N·m·s²
 * @source hoerner-drag, chapter 3, integrated over strips (M1)
 */
export function panelDragCoefficient(areaM2: number, lengthM: number): number {
  return (slideDragCoefficient(areaM2) * lengthM * lengthM * lengthM) / 4;
}

/**
 * Drag of a plate that moves square to its face: force per speed².
 * @param areaM2 of the plate
 * @returns N·s²/m²
 * @source hoerner-drag, chapter 3 (M2)
 */
export function slideDragCoefficient(areaM2: number): number {
  return 0.5 * airDensityKgPerM3 * flatPlateDragCoefficient * areaM2;
}

/**
 * Torque of a steady gust square to a rectangle that is hinged on one edge.
 * @param areaM2 of the rectangle
 * @param lengthM hinge to tip; the force acts at half of it
 * @param gustMPerS speed of the air
 * @returns N·m
 * @source hoerner-drag, chapter 3 (M1)
 */
export function hingeGustEffort(areaM2: number, lengthM: number, gustMPerS: number): number {
  return (slideGustEffort(areaM2, gustMPerS) * lengthM) / 2;
}

/**
 * Force of a steady gust square to a plate.
 * @param areaM2 of the plate
 * @param gustMPerS speed of the air
 * @returns N
 * @source hoerner-drag, chapter 3 (M2)
 */
export function slideGustEffort(areaM2: number, gustMPerS: number): number {
  return slideDragCoefficient(areaM2) * gustMPerS * gustMPerS;
}

/**
 * Weight of a mass under standard gravity.
 * @param massKg at least 0
 * @returns N
 * @source si-brochure, 3rd CGPM (1901)
 */
export function weightN(massKg: number): number {
  return massKg * standardGravityMPerS2;
}
