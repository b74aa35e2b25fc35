/** Names of the motion laws a cue can follow. */
export const motionLaws = [
  'trapezoid',
  'cycloidal',
  'harmonic',
  'modified-sine',
  'poly-345',
  'poly-4567',
] as const;
export type MotionLaw = (typeof motionLaws)[number];
