import { inDraws, surenessWord } from '../certainty/sureness.js';
import type { Confidence } from '../certainty.js';
import { percent } from '../figures.js';
import { enoughGain } from '../thresholds.js';
import { type Decision, patientEvents } from './decide.js';
import { labelsOf } from './labels.js';
import { beatsToday } from './open-limits.js';
import { nearestToPassing, type VerdictParts } from './verdict-parts.js';

/** The probability that stands behind a decision, with its word and a sentence that says of what it is. */
export function confidenceIn(decision: Decision, parts: VerdictParts): Confidence {
  const { probability, claim, ifHeld = probability } = groundOf(decision, parts);
  const often = probability === null ? '' : ` in ${inDraws(probability)} of the draws`;
  if (probability === null || ifHeld === null || ifHeld >= probability - visiblyLess) {
    return { probability, word: surenessWord(probability), sentence: `${claim}${often}.` };
  }
  const open = `in ${inDraws(ifHeld)} if what could not be judged passes`;
  return { probability, word: surenessWord(ifHeld), sentence: `${claim}${often}, ${open}.` };
}

/** A smaller difference between shares of draws is not worth a word. */
const visiblyLess = 0.005;

interface Ground {
  probability: number | null;
  /** Goes before `in … of the draws`. */
  claim: string;
  /** The probability if every limit held that cannot be judged: the word is no surer than that. */
  ifHeld?: number | null;
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
      : {
          probability: ofLeader.leadProbability,
          claim: `${label(leader.id)} leads with ${weightsOf(parts)}`,
          ifHeld: parts.ifHeld?.[leader.id]?.leadProbability ?? ofLeader.leadProbability,
        };
  switch (decision.kind) {
    case 'none of these':
      return {
        probability: 1 - (certainty.candidates[nearest.id]!.passProbability ?? 0),
        claim: `${label(nearest.id)}, the nearest, fails a limit`,
      };
    case 'measure first':
      if (decision.measurement !== null) return leads;
      if (decision.hidden === 'supply of today')
        return { probability: null, claim: 'How it is fed is not known' };
      return decision.hidden === null
        ? { probability: null, claim: 'A figure is missing without which no candidate can be judged in full' }
        : leads;
    case 'keep with a lesser change': {
      const passesWithIt = `${label(baseline?.id ?? leader.id)} passes every limit with it`;
      return decision.because === 'only way'
        ? { probability: decision.change.passProbability, claim: passesWithIt }
        : {
            probability: decision.change.replaceProbability,
            claim: `${label(baseline?.id ?? leader.id)} with it passes every limit and gains at least ${percent(enoughGain)} of what ${label(leader.id)} gains,`,
          };
    }
    case 'choose':
      return decision.because === 'only hope' ? passes : leads;
    default:
  }
  if (decision.because === 'only hope') return passes;
  if (baseline === null || leader.isBaseline) return leads;
  const beats = beatsToday(parts);
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

/** Whose weights they are: without any of the user's nobody may call them theirs. */
const weightsOf = ({ study }: VerdictParts): string =>
  study.criteria.some(({ origin }) => origin === 'given') ? 'your weights' : 'the weights assumed';
