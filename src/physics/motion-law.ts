/** Names of the motion laws a cue can follow. */
export const motionLaws = [
  'trapezoid',
  'cycloidal',
  'harmonic',
  'modified-sine',
  'poly-345',
  'poly-4567',
] as const;
/** How position follows time within a move, from rest to rest. */
export type MotionLaw = (typeof motionLaws)[number];

const fourPlusPi = 4 + Math.PI;

/**
 * Share of the travel that is done; 0 before the move, 1 after it.
 * @param law motion law
 * @param timeFraction time over duration
 * @returns 0…1
 * @source rothbart, cam curves, from memory; poly-345 also flash-hogan, minimum jerk (M16)
 */
export function lawPosition(law: MotionLaw, timeFraction: number): number {
  const t = timeFraction;
  if (t <= 0) return 0;
  if (t >= 1) return 1;
  switch (law) {
    case 'trapezoid':
      if (t < 1 / 3) return 2.25 * t * t;
      if (t <= 2 / 3) return 1.5 * t - 0.25;
      return 1 - 2.25 * (1 - t) * (1 - t);
    case 'cycloidal':
      return t - Math.sin(2 * Math.PI * t) / (2 * Math.PI);
    case 'harmonic':
      return (1 - Math.cos(Math.PI * t)) / 2;
    case 'modified-sine':
      if (t < 1 / 8) return (Math.PI * t - Math.sin(4 * Math.PI * t) / 4) / fourPlusPi;
      if (t <= 7 / 8) {
        return (2 + Math.PI * t - 2.25 * Math.sin((4 * Math.PI * t + Math.PI) / 3)) / fourPlusPi;
      }
      return (4 + Math.PI * t - Math.sin(4 * Math.PI * t) / 4) / fourPlusPi;
    case 'poly-345':
      return t * t * t * (10 - t * (15 - 6 * t));
    case 'poly-4567':
      return t * t * t * t * (35 - t * (84 - t * (70 - 20 * t)));
  }
}

/**
 * Normalised velocity; 0 outside the move.
 * @param law motion law
 * @param timeFraction time over duration
 * @returns travels per duration, at least 0
 * @source rothbart, cam curves, from memory (M16)
 */
export function lawVelocity(law: MotionLaw, timeFraction: number): number {
  const t = timeFraction;
  if (t <= 0 || t >= 1) return 0;
  switch (law) {
    case 'trapezoid':
      return Math.min(1.5, 4.5 * t, 4.5 * (1 - t));
    case 'cycloidal':
      return 1 - Math.cos(2 * Math.PI * t);
    case 'harmonic':
      return (Math.PI / 2) * Math.sin(Math.PI * t);
    case 'modified-sine':
      if (t < 1 / 8 || t > 7 / 8) return (Math.PI * (1 - Math.cos(4 * Math.PI * t))) / fourPlusPi;
      return (Math.PI * (1 - 3 * Math.cos((4 * Math.PI * t + Math.PI) / 3))) / fourPlusPi;
    case 'poly-345':
      return 30 * t * t * (1 - t) * (1 - t);
    case 'poly-4567':
      return 140 * (t * (1 - t)) ** 2 * t * (1 - t);
  }
}

/**
 * Normalised acceleration; 0 outside the move, the one-sided value at its two ends.
 * A trapezoid takes the value of the phase that ends at each of its corners.
 * @param law motion law
 * @param timeFraction time over duration
 * @returns travels per duration², negative while it slows down
 * @source rothbart, cam curves, from memory (M16)
 */
export function lawAcceleration(law: MotionLaw, timeFraction: number): number {
  const t = timeFraction;
  if (t < 0 || t > 1) return 0;
  switch (law) {
    case 'trapezoid':
      if (t <= 1 / 3) return 4.5;
      return t <= 2 / 3 ? 0 : -4.5;
    case 'cycloidal':
      return 2 * Math.PI * Math.sin(2 * Math.PI * t);
    case 'harmonic':
      return (Math.PI ** 2 / 2) * Math.cos(Math.PI * t);
    case 'modified-sine':
      if (t < 1 / 8 || t > 7 / 8) return (4 * Math.PI ** 2 * Math.sin(4 * Math.PI * t)) / fourPlusPi;
      return (4 * Math.PI ** 2 * Math.sin((4 * Math.PI * t + Math.PI) / 3)) / fourPlusPi;
    case 'poly-345':
      return 60 * t * (1 - t) * (1 - 2 * t);
    case 'poly-4567':
      return 420 * (t * (1 - t)) ** 2 * (1 - 2 * t);
  }
}
