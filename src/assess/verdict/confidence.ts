import { inDraws, surenessWord } from '../certainty/sureness.js';
import type { Confidence } from '../certainty.js';
import { type Decision, patientEvents } from './decide.js';
import { labelsOf } from './labels.js';
import { beatProbability, nearestToPassing, type VerdictParts } from './verdict-parts.js';

/** The probability that stands behind a decision, with its word and a sentence that says of what it is. */
export function confidenceIn(decision: Decision, parts: VerdictParts): Confidence {
  const { probability, claim } = groundOf(decision, parts);
  const often = probability === null ? '' : ` in ${inDraws(probability)} of the draws`;
  return { probability, word: surenessWord(probability), sentence: `${claim}${often}.` };
}

interface Ground {
  probability: number | null;
  /** Goes before `in … of the draws`. */
  claim: string;
}

function groundOf(decision: Decision, parts: VerdictParts): Ground {
  const { ranked, leader, baseline, certainty } = parts;
  const label = labelsOf(ranked);
  const ofLeader = certainty.candidates[leader.id]!;
  const nearest = nearestToPassing(ranked, certainty);
  const passes: Ground = {
    probability: ofLeader.passProbability,
    claim: `${label(leader.id)} passes every limit`,
  };
  const leads: Ground =
    ranked.length === 1
      ? passes
      : { probability: ofLeader.leadProbability, claim: `${label(leader.id)} leads with your weights` };
  switch (decision.kind) {
    case 'none of these':
      return {
        probability: 1 - (certainty.candidates[nearest.id]!.passProbability ?? 0),
        claim: `${label(nearest.id)}, the nearest, fails a limit`,
      };
    case 'measure first':
      return decision.measurement === null
        ? { probability: null, claim: 'A figure is missing without which no candidate can be judged in full' }
        : leads;
    case 'keep with a lesser change':
      return {
        probability: decision.change.passProbability,
        claim: `${label(leader.isBaseline ? leader.id : (baseline?.id ?? leader.id))} passes every limit with it`,
      };
    case 'choose':
      return decision.because === 'only hope' ? passes : leads;
    default:
  }
  if (decision.because === 'only hope') return passes;
  if (baseline === null || leader.isBaseline) return leads;
  const beats = beatProbability(certainty, leader.id, baseline.id);
  const [better, today] = [label(leader.id), label(baseline.id)];
  if (decision.because === 'better') return { probability: beats, claim: `${better} beats ${today}` };
  if (decision.because === 'does not pay') {
    return {
      probability: 1 - parts.payProbability(),
      claim: `${better} is no better than ${today} or does not pay within ${patientEvents} events`,
    };
  }
  return { probability: 1 - beats, claim: `${today} does no worse than ${better}` };
}
