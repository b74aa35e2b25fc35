/** How the feature moves: about a hinge (coordinate: angle, 0 = level, + = up) or along a rail. */
export type FeatureKind = 'hinge' | 'slide';

/** Body used to estimate the inertia when none is given. */
export type FeatureShape = 'rod' | 'panel' | 'point' | 'unknown';

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
  /** `coil`: from an anchor straight above the hinge to a point along the feature. */
  rateNPerM: number;
  frameArmM: number;
  featureArmM: number;
  freeLengthM: number;
}

/** No spring at all; others are written as changes of it. */
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

/** The moving feature. Positions in rad on a hinge, m on a slide; efforts in N·m or N. */
export interface Feature {
  kind: FeatureKind;
  featureCount: number;
  massKg: number;
  /** Hinge to the point where the feature balances; 0 on a slide. */
  balanceDistanceM: number;
  /** Hinge to tip; 0 on a slide. */
  tipDistanceM: number;
  /** Reading of a scale under the tip with the feature level; replaces mass × balance distance. */
  tipScaleKg: number | null;
  inertiaKgM2: number | null;
  shape: FeatureShape;
  panelAreaM2: number;
  lowerStopPosition: number;
  upperStopPosition: number;
  /** Rail above level (slide only). */
  inclineRad: number;
  /** Hinge axis off level (hinge only). */
  axisTiltRad: number;
  frictionEffort: number;
  /** Position at which a latch bears the load; null when there is none. */
  latchPosition: number | null;
  spring: AssistSpring;
}

/** What the carrier does, which sets the bounce of peak loads. */
export type Activity = 'stand' | 'walk' | 'brisk' | 'dance' | 'jump';

/** Who or what carries the feature. */
export interface Carrier {
  worn: boolean;
  activity: Activity;
  /** Lean of the carrier, positive when it raises the feature. */
  leanRad: number;
  bodyMassKg: number | null;
}

/** The air round the drive. */
export interface Air {
  gustMPerS: number;
  temperatureK: number;
  /** Covered by foam or fabric. */
  buried: boolean;
}

/** Free box for one drive; null = no limit in that direction. */
export interface Space {
  lengthM: number | null;
  widthM: number | null;
  heightM: number | null;
}
