import type { CandidateAssessment } from '../assessment.js';
import { canValueEvents } from '../break-even.js';
import type { RatedChange, VerdictKind, WorthOfMeasuring } from '../certainty.js';
import { enoughGain, likelyFrom, surePassFrom } from '../thresholds.js';
import { beatsToday, hiddenLeader, type OpenContender } from './open-limits.js';
import { leastPass, type VerdictParts } from './verdict-parts.js';

/** Score that measuring must be worth to come first. (M25) */
const worthMeasuring = 0.02;

/** A lesser change may take so much of the leader's hours. (M25) */
const fewHours = 0.5;

/** Share of draws from which a change more likely pays than not. */
const likelyPays = 0.5;

/** Events in which a redesign has to pay. (M25) */
export const patientEvents = 10;

/** What is decided, and on which ground. */
export type Decision =
  | { kind: 'none of these' }
  | { kind: 'redesign'; because: 'only hope' | 'better' }
  | { kind: 'measure first'; measurement: WorthOfMeasuring }
  /** A blank stands before everything that could be measured; hidden behind it may be who would lead. */
  | { kind: 'measure first'; measurement: null; hidden: OpenContender | null }
  /** The drive of today would not bear its pack, and how it is fed was left blank. */
  | { kind: 'measure first'; measurement: null; hidden: 'supply of today' }
  | { kind: 'keep with a lesser change'; because: 'most of the gain' | 'only way'; change: RatedChange }
  | { kind: 'keep'; because: 'best' | 'not sure enough' | 'does not pay' | 'only hope' }
  | { kind: 'choose'; because: 'leads' | 'only hope' };

/** The first of the five that applies, in their order; without a drive of today the best is chosen. (M25) */
export function decide(parts: VerdictParts): Decision {
  return (
    feeding(parts) ??
    nothingPasses(parts) ??
    filling(parts) ??
    measuring(parts) ??
    choosing(parts) ??
    lesser(parts) ??
    redesign(parts)
  );
}

/** Before all: a drive in use that could not be, by a blank alone, says that the study is not that of the feature. */
function feeding({ study, baseline }: VerdictParts): Decision | null {
  if (baseline === null) return null;
  const failed = baseline.limits.filter(({ passes }) => passes === false);
  const supply = study.provenance.find(({ path }) => path === `candidates.${baseline.id}.sheet.supply`);
  return failed.length === 1 && failed[0]!.criterion === 'voltage' && supply?.origin === 'assumed'
    ? { kind: 'measure first', measurement: null, hidden: 'supply of today' }
    : null;
}

/** (1) Nothing passes, or only on its figures: a blank, a lesser change, chance is left, or nothing. */
function nothingPasses(parts: VerdictParts): Decision | null {
  const { ranked, leader, certainty } = parts;
  const passing = (id: string) => certainty.candidates[id]!.passProbability ?? 0;
  const passesOnPaper = ranked.some(({ passes }) => passes === true);
  if (passesOnPaper && ranked.some(({ id }) => passing(id) >= leastPass)) return null;
  // A figure is missing: what it would say is the first thing to find out.
  if (ranked.some(({ passes }) => passes === null)) {
    return { kind: 'measure first', measurement: null, hidden: null };
  }
  if (passing(leader.id) < leastPass) {
    return rescue(parts) ?? { kind: 'none of these' };
  }
  const kind: VerdictKind = leader.isBaseline
    ? 'keep'
    : ranked.some(({ isBaseline }) => isBaseline)
      ? 'redesign'
      : 'choose';
  return { kind, because: 'only hope' };
}

/** What is sure enough is as good as surer: then the work decides. */
const sureness = ({ passProbability }: RatedChange): number => Math.min(passProbability ?? 0, surePassFrom);

/** The lesser change that makes the drive of today pass, where nothing else does. */
function rescue({ changes, baseline }: VerdictParts): Decision | null {
  if (baseline === null) return null;
  const [change] = changes
    .filter(({ passes, passProbability }) => passes === true && (passProbability ?? 0) >= leastPass)
    .sort((a, b) => sureness(b) - sureness(a) || a.burden.workTimeS - b.burden.workTimeS);
  return change === undefined ? null : { kind: 'keep with a lesser change', because: 'only way', change };
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
  return change === undefined
    ? null
    : { kind: 'keep with a lesser change', because: 'most of the gain', change };
}

/** (4) Better, surely enough, and it pays; (5) else everything stays as it is. */
function redesign(parts: VerdictParts): Decision {
  const { study, leader, baseline } = parts;
  if (baseline === null || leader.isBaseline) return { kind: 'keep', because: 'best' };
  if (beatsToday(parts) < likelyFrom) return { kind: 'keep', because: 'not sure enough' };
  // What breaks a hard limit cannot stay for want of money, and where no hour has a price, or nothing says what an
  // event needs, none is asked to return.
  const mustPay = baseline.passes !== false && study.hourPriceMoney > 0 && canValueEvents(study);
  return mustPay && parts.payProbability() < likelyPays
    ? { kind: 'keep', because: 'does not pay' }
    : { kind: 'redesign', because: 'better' };
}
