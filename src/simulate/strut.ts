import type { DriveSheet } from '../drives/sheet.js';
import { type LoadParameters, staticEffort } from '../physics/load.js';
import { proposeStrut } from '../physics/strut-proposal.js';
import type { Study } from '../study/study.js';
import { type CueRange, givenPivots, type StrutPivots } from './mechanics.js';

/** Pivots to compute with, and whether the tool had to propose them. */
export interface ChosenPivots {
  /** null for couplings other than a strut. */
  pivots: StrutPivots | null;
  /** `by-stroke`: the drive's length is not known; `fallback`: nothing fits. */
  proposed: false | 'fits' | 'by-stroke' | 'fallback';
}

/** A linkage that nothing fits still needs pivots to show where it fails: a third of the feature, square at level. */
const fallbackArmFraction = 1 / 3;

/** The sheet's pivots; where any is blank, those that fit the drive with the least peak force. (M4) */
export function strutPivots(
  study: Study,
  sheet: DriveSheet,
  load: LoadParameters,
  range: CueRange,
): ChosenPivots {
  if (sheet.coupling !== 'strut') return { pivots: null, proposed: false };
  const given = givenPivots(sheet);
  if (given !== null) return { pivots: given, proposed: false };
  const { tipDistanceM } = study.feature;
  const proposal = proposeStrut({
    strokeM: sheet.strokeM ?? 0,
    closedLengthM: sheet.closedLengthM,
    tipDistanceM,
    lowestRad: range.lowest,
    highestRad: range.highest,
    effort: (angleRad) => staticEffort(load, angleRad),
  });
  const armM = tipDistanceM * fallbackArmFraction;
  const pivots = proposal ?? {
    frameArmM: armM,
    featureArmM: armM,
    levelAngleRad: Math.PI / 2,
    side: sheet.strutSide,
  };
  if (proposal === null) return { pivots, proposed: 'fallback' };
  return { pivots, proposed: sheet.closedLengthM === null ? 'by-stroke' : 'fits' };
}
