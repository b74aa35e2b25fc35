import type { CandidateAssessment } from '../assessment.js';
import type { RatedChange, VerdictKind, WorthOfMeasuring } from '../certainty.js';
import { likelyFrom, surePassFrom } from '../thresholds.js';
import { beatsToday, hiddenLeader, type OpenContender } from './open-limits.js';
import { leastPass, type VerdictParts } from './verdict-parts.js';

/** Score that measuring must be worth to come first. (M25) */
const worthMeasuring = 0.02;

/** A lesser change has to reach so much of the leader's gain, at so much of its hours. (M25) */
const enoughGain = 0.7;
const fewHours = 0.5;

/** Events in which a redesign has to pay. (M25) */
export const patientEvents = 10;

/** What is decided, and on which ground. */
export type Decision =
  | { kind: 'none of these' }
  | { kind: 'redesign'; because: 'only hope' | 'better' }
  | { kind: 'measure first'; measurement: WorthOfMeasuring }
  /** A blank stands before everything that could be measured; hidden behind it may be who would lead. */
  | { kind: 'measure first'; measurement: null; hidden: OpenContender | null }
  | { kind: 'keep with a lesser change'; change: RatedChange }
  | { kind: 'keep'; because: 'best' | 'not sure enough' | 'does not pay' | 'only hope' }
  | { kind: 'choose'; because: 'leads' | 'only hope' };

/** The first of the five that applies, in their order; without a drive of today the best is chosen. (M25) */
export function decide(parts: VerdictParts): Decision {
  return (
    nothingPasses(parts) ??
    filling(parts) ??
    measuring(parts) ??
    choosing(parts) ??
    lesser(parts) ??
    redesign(parts)
  );
}

/** (1) Nothing passes on its figures, or only on its figures: chance is left, or nothing. */
function nothingPasses(parts: VerdictParts): Decision | null {
  const { ranked, leader, certainty } = parts;
  if (ranked.some(({ passes }) => passes === true)) {
    return isHopeless(parts) ? { kind: 'none of these' } : null;
  }
  // A figure is missing: what it would say is the first thing to find out.
  if (ranked.some(({ passes }) => passes === null)) {
    return { kind: 'measure first', measurement: null, hidden: null };
  }
  const chance = certainty.candidates[leader.id]!.passProbability ?? 0;
  if (chance < leastPass) return { kind: 'none of these' };
  const kind: VerdictKind = leader.isBaseline
    ? 'keep'
    : ranked.some(({ isBaseline }) => isBaseline)
      ? 'redesign'
      : 'choose';
  return { kind, because: 'only hope' };
}

/** Whether everything is judged, and neither a candidate nor a lesser change passes in half of the draws. */
function isHopeless({ ranked, certainty, changes }: VerdictParts): boolean {
  const isUnlikely = ({ passProbability }: { passProbability: number | null }) =>
    passProbability !== null && passProbability < leastPass;
  return (
    ranked.every(({ id }) => isUnlikely(certainty.candidates[id]!)) &&
    !changes.some(({ passProbability }) => (passProbability ?? 0) >= leastPass)
  );
}

/** Before (2): nothing drawn says what a blank hides, and filling it in costs least of all. */
function filling(parts: VerdictParts): Decision | null {
  const hidden = hiddenLeader(parts);
  return hidden === null ? null : { kind: 'measure first', measurement: null, hidden };
}

/** (2) A bench method settles what the choice hangs on. */
function measuring({ measurables }: VerdictParts): Decision | null {
  const measurement = measurables.find(({ worth }) => worth.measurable)?.worth;
  return measurement !== undefined && measurement.worthScore >= worthMeasuring
    ? { kind: 'measure first', measurement }
    : null;
}

function choosing({ baseline }: VerdictParts): Decision | null {
  return baseline === null ? { kind: 'choose', because: 'leads' } : null;
}

/** Whether a change to the drive of today could be advised in place of a leader. */
export function replaces(change: RatedChange, leader: CandidateAssessment): boolean {
  const leaderWorkS = leader.nominal.reworkTimeS;
  if (leader.isBaseline || leaderWorkS === null) return false;
  return (
    change.passes === true &&
    change.burden.workTimeS <= fewHours * leaderWorkS &&
    (change.passProbability ?? 0) >= surePassFrom &&
    (change.leaderGainRatio ?? 0) >= enoughGain
  );
}

/** (3) The cheapest of the lesser changes that gets most of the gain for a fraction of the work. */
function lesser({ leader, changes }: VerdictParts): Decision | null {
  const enough = changes.filter((change) => replaces(change, leader));
  const [change] = [...enough].sort(
    (a, b) => a.burden.workTimeS - b.burden.workTimeS || (b.leaderGainRatio ?? 0) - (a.leaderGainRatio ?? 0),
  );
  return change === undefined ? null : { kind: 'keep with a lesser change', change };
}

/** (4) Better, surely enough, and it pays; (5) else everything stays as it is. */
function redesign(parts: VerdictParts): Decision {
  const { study, leader, baseline, breakEven } = parts;
  if (baseline === null || leader.isBaseline) return { kind: 'keep', because: 'best' };
  if (beatsToday(parts) < likelyFrom) return { kind: 'keep', because: 'not sure enough' };
  // What breaks a hard limit cannot stay for want of money, and where no hour has a price none is asked to return.
  const mustPay = baseline.passes !== false && study.hourPriceMoney > 0;
  const events = breakEven?.eventCount ?? null;
  const pays = events !== null && events <= patientEvents;
  return mustPay && !pays
    ? { kind: 'keep', because: 'does not pay' }
    : { kind: 'redesign', because: 'better' };
}
