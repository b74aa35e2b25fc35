import { packDrawOf } from '../../simulate/ensemble/pack-draw.js';
import type { NominalOutcome } from '../../simulate/outcome.js';
import type { DayActivity } from '../../study/show.js';
import type { Candidate, Study } from '../../study/study.js';
import { stillCurrentA } from './rest-current.js';

/** How fast the day empties a pack. Charge as a share of what the pack holds at its temperature and age. */
export interface Consumption {
  /** Of a full pack. */
  chargeC: number;
  restCurrentA: number;
  /** State of charge in the show at which the warning comes; null when the end comes first. */
  warningSocFraction: number | null;
  /** State of charge at which the show ends. */
  endSocFraction: number;
  currentsA: Record<DayActivity, number>;
}

/**
 * Mean currents of the day's activities from one pack's run-down: what a full pack holds above its end, over the
 * time it lasts in the show. A run that ends on its voltage leaves charge behind; how much follows from the mean
 * current of the loop.
 * @returns null when the show cannot be played
 */
export function consumptionOf(
  study: Study,
  candidate: Candidate,
  outcome: NominalOutcome,
): Consumption | null {
  const { runtimeS, warningS, endReason, meanPackCurrentA } = outcome;
  if (runtimeS === null || meanPackCurrentA === null || !(runtimeS > 0)) return null;
  const { chargeC, reserveFraction } = packDrawOf(study);
  const left = 1 - (meanPackCurrentA * runtimeS) / chargeC;
  const endSocFraction = endReason === 'reserve' ? reserveFraction : clamp(left, reserveFraction, 1);
  const showA = ((1 - endSocFraction) * chargeC) / runtimeS;
  const restCurrentA = stillCurrentA(study, candidate);
  return {
    chargeC,
    restCurrentA,
    warningSocFraction: warningS === null ? null : clamp(1 - (showA * warningS) / chargeC, endSocFraction, 1),
    endSocFraction,
    currentsA: { show: showA, still: restCurrentA, off: 0 },
  };
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
