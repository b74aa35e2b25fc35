import {
  decidingPowerCut,
  type NominalOutcome,
  type PowerCutOutcome,
  type StopName,
} from '../../simulate/outcome.js';
import type { CandidateAssessment } from '../assessment.js';
import { least, most } from './cautious.js';

/**
 * What the feature does when its power is cut at a hold, to whichever stop: `may-fall` where it does not fall by the
 * nominal figures but does in some draws; `sinks` where it gives way without a time or a speed that could be named.
 */
export type PowerCutAnswer = 'falls' | 'may-fall' | 'sinks' | 'stays';

/** One state of the motor leads, nominal. */
export interface LeadState {
  does: Exclude<PowerCutAnswer, 'may-fall'>;
  fallS: number | null;
}

/** The fall at its worst: the shortest time, the fastest tip, the most energy of nine draws in ten. */
export interface FallFigures {
  answer: PowerCutAnswer;
  /** The stop it is pulled to, nominal. */
  towards: StopName;
  /** Share of draws in which it falls; null without draws. */
  fallProbability: number | null;
  fallS: number | null;
  tipSpeedMPerS: number | null;
  energyJ: number | null;
  open: LeadState;
  shorted: LeadState;
  /** Which of the two is the drive's own. */
  decides: NominalOutcome['powerCut']['decides'];
  locking: NominalOutcome['locking'];
  /** Whether it stays under the shaking of a carrier, by gears or friction, nominal. */
  staysWhenShaken: boolean;
}

/**
 * What a power cut does, each figure at its cautious end.
 * @param tipMassKg of the feature against being stopped at its tip
 */
export function fallFigures({ nominal, uncertain }: CandidateAssessment, tipMassKg: number): FallFigures {
  const { powerCut, locking } = nominal;
  const deciding = decidingPowerCut(nominal);
  const does = stateOf(deciding).does;
  const drawn = uncertain.fallS;
  const falls = does === 'falls' || (drawn !== undefined && drawn.occursFraction > 0);
  const hasDraws = Object.keys(uncertain).length > 0;
  const speeds = [deciding.tipSpeedMPerS, deciding.largestTipSpeedMPerS, uncertain.tipSpeedMPerS?.p90];
  const tipSpeedMPerS = falls ? most(...speeds) : null;
  // Draws that do not fall count as no energy: the speed of those that do says more where a fall is rare.
  const ofSpeed = tipSpeedMPerS === null ? null : 0.5 * tipMassKg * tipSpeedMPerS ** 2;
  return {
    answer: falls && does !== 'falls' ? 'may-fall' : does,
    towards: deciding.towards,
    fallProbability: hasDraws ? (drawn?.occursFraction ?? 0) : null,
    fallS: falls ? least(deciding.fallS, drawn?.p10) : null,
    tipSpeedMPerS,
    energyJ: falls ? most(deciding.impactEnergyJ, uncertain.fallEnergyJ?.p90, ofSpeed) : null,
    open: stateOf(powerCut),
    shorted: stateOf(powerCut.shorted),
    decides: powerCut.decides,
    locking,
    staysWhenShaken: deciding.staysWhenShaken,
  };
}

function stateOf({ stays, fallS }: PowerCutOutcome): LeadState {
  if (stays) return { does: 'stays', fallS: null };
  return fallS === null ? { does: 'sinks', fallS } : { does: 'falls', fallS };
}
