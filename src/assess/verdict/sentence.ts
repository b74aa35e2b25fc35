import { canValueEvents } from '../break-even.js';
import { inDraws } from '../certainty/sureness.js';
import { counted, decimal, hours, percent } from '../figures.js';
import { type Decision, patientEvents } from './decide.js';
import { fieldWords, labelsOf, small } from './labels.js';
import { beatsToday, blankFields, openLimits } from './open-limits.js';
import { nearestToPassing, tiedWithLeader, type VerdictParts } from './verdict-parts.js';

/** The whole answer in one sentence. */
export function verdictSentence(decision: Decision, parts: VerdictParts): string {
  const { ranked, leader, baseline, certainty } = parts;
  const label = labelsOf(ranked);
  const better = label(leader.id);
  const today = baseline === null ? '' : label(baseline.id);
  const ofLeader = certainty.candidates[leader.id]!;
  const passing = inDraws(ofLeader.passProbability ?? 0);
  const leading = inDraws(ofLeader.leadProbability ?? 0);
  switch (decision.kind) {
    case 'none of these':
      return noneSentence(parts);
    case 'measure first':
      if (decision.measurement === null && decision.hidden === 'supply of today') {
        return `Say first how ${today}, the drive of today, is fed: its supply is blank, and straight from the pack it would get more volts than it bears, which alone rules it out; if it has a regulator, everything is another matter.`;
      }
      if (decision.measurement === null && decision.hidden !== null) {
        const { candidate, leadProbability } = decision.hidden;
        return `Fill in first what ${label(candidate.id)} lacks (${blankFields(candidate)}): if it then keeps its limit of ${openLimits(candidate)}, it leads in ${inDraws(leadProbability)} of the draws; until then ${better} leads in ${leading}.`;
      }
      return decision.measurement === null
        ? `Fill in what is missing first: no candidate is known to pass every limit, and ${better} passes what could be judged.`
        : `Measure ${measured(parts, decision.measurement)} first: knowing it would change the choice in ${inDraws(decision.measurement.changedProbability)} of the draws, and until then ${better} leads in ${leading}.`;
    case 'keep with a lesser change':
      return decision.because === 'only way'
        ? `Keep ${today}, with one change: ${small(decision.change.title)}; with it every limit holds in ${inDraws(decision.change.passProbability ?? 0)} of the draws, for ${hours(decision.change.burden.workTimeS)} of work, and no candidate passes as it stands in half of them.`
        : `Keep ${today}, with one change: ${small(decision.change.title)}; it gains ${gained(decision.change.leaderGainRatio ?? 0, better)}, for ${hours(decision.change.burden.workTimeS)} of work instead of ${hours(leader.nominal.reworkTimeS ?? 0)}.`;
    case 'choose':
      return decision.because === 'only hope'
        ? `Choose ${better}: nothing passes on its figures as they stand, but this one does in ${passing} of the draws.`
        : `Choose ${better}: ${alone(parts) ?? lead(parts)}.`;
    case 'keep':
      return keepSentence(decision.because, parts, better, today);
    case 'redesign':
      return decision.because === 'only hope'
        ? `Change to ${better}: nothing passes on its figures as they stand, but this one does in ${passing} of the draws.`
        : `Change to ${better}: it beats ${today}, the drive of today, in ${inDraws(beatsToday(parts))} of the draws${paid(parts)}.`;
  }
}

function noneSentence({ ranked, certainty }: VerdictParts): string {
  const nearest = nearestToPassing(ranked, certainty);
  const passing = inDraws(certainty.candidates[nearest.id]!.passProbability ?? 0);
  const enough = ranked.some(({ passes }) => passes === true) ? ' in half of the draws' : '';
  return `None of these: no candidate passes every limit${enough}, and ${labelsOf(ranked)(nearest.id)}, the nearest, passes in ${passing} of the draws.`;
}

/** How the leader leads; with somebody who is as good, that nobody is clearly ahead comes first. */
function lead(parts: VerdictParts): string {
  const { ranked, leader, certainty } = parts;
  const leads = (id: string) => inDraws(certainty.candidates[id]!.leadProbability ?? 0);
  const own = `it leads in ${leads(leader.id)} of the draws`;
  const [tied] = tiedWithLeader(parts);
  return tied === undefined
    ? own
    : `nobody is clearly ahead; ${own}, ${labelsOf(ranked)(tied.id)} in ${leads(tied.id)}`;
}

/** What a lesser change gains of the score, against what the leader would. */
function gained(ratio: number, better: string): string {
  if (ratio < 0.995) return `${percent(ratio)} of the score that ${better} would`;
  if (ratio < 1.05) return `as much as ${better} would`;
  // Against a leader that gains next to nothing any number of times would be reached.
  return ratio < 2
    ? `${decimal(ratio, 1)} times the score that ${better} would`
    : `more than twice the score that ${better} would`;
}

/** Where nothing stands beside it. */
function alone({ ranked, leader, certainty }: VerdictParts): string | null {
  if (ranked.length > 1) return null;
  const passing = certainty.candidates[leader.id]!.passProbability;
  const sure = passing === null ? '' : ` and passes every limit in ${inDraws(passing)} of the draws`;
  return `it is the only candidate${sure}`;
}

function keepSentence(
  because: 'best' | 'not sure enough' | 'does not pay' | 'only hope',
  parts: VerdictParts,
  better: string,
  today: string,
): string {
  const { leader, certainty, breakEven } = parts;
  const ofLeader = certainty.candidates[leader.id]!;
  if (because === 'only hope') {
    return `Keep ${better}: nothing passes on its figures as they stand, but this one does in ${inDraws(ofLeader.passProbability ?? 0)} of the draws.`;
  }
  if (because === 'best') {
    return `Keep ${better}: ${alone(parts) ?? lead(parts)}.`;
  }
  const beats = inDraws(beatsToday(parts));
  if (because === 'not sure enough') {
    return `Keep ${today}: ${better} beats it in no more than ${beats} of the draws, which is not worth a redesign.`;
  }
  const events = breakEven?.eventCount ?? null;
  const price =
    events === null
      ? 'never pays for itself'
      : events > patientEvents
        ? `pays for itself only after ${counted(events, 'event')}`
        : `pays within ${patientEvents} events in only ${inDraws(parts.payProbability())}`;
  return `Keep ${today}: ${better} beats it in ${beats} of the draws but ${price}.`;
}

function paid({ breakEven, study }: VerdictParts): string {
  const events = breakEven?.eventCount ?? null;
  if (events === null || study.hourPriceMoney === 0 || !canValueEvents(study)) return '';
  return events === 0 ? ' and costs no more' : ` and has paid for itself after ${counted(events, 'event')}`;
}

/** `the hold current of Servo as built`. */
export function measured(
  { ranked }: Pick<VerdictParts, 'ranked'>,
  { field, owner }: { field: string; owner: string | null },
): string {
  const label = labelsOf(ranked);
  const of = owner === null ? '' : ` of ${label(owner)}`;
  return `the ${fieldWords(field)}${of}`;
}
