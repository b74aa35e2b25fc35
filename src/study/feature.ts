import type { AssistSpring, BodyShape } from '../physics/load.js';

export type { AssistSpring, BodyShape };

/** How the feature moves: about a hinge (coordinate: angle, 0 = level, + = up) or along a rail. */
export type FeatureKind = 'hinge' | 'slide';

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
  shape: BodyShape;
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
