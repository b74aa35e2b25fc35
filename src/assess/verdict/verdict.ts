import type { Verdict } from '../certainty.js';
import { confidenceIn } from './confidence.js';
import { type Decision, decide } from './decide.js';
import { overturnedBy } from './overturned.js';
import { reasonsFor } from './reasons.js';
import { verdictSentence } from './sentence.js';
import type { VerdictParts } from './verdict-parts.js';

/** The verdict from the draws: what to do, how sure, why, and what would overturn it. (M25) */
export function verdictOf(parts: VerdictParts): Verdict {
  const decision = decide(parts);
  return {
    kind: decision.kind,
    leader: recommended(decision, parts),
    change: decision.kind === 'keep with a lesser change' ? decision.change.parts : [],
    sentence: verdictSentence(decision, parts),
    confidence: confidenceIn(decision, parts),
    reasons: reasonsFor(decision, parts),
    overturnedBy: overturnedBy(parts),
  };
}

function recommended(decision: Decision, { leader, baseline }: VerdictParts): string | null {
  if (decision.kind === 'none of these') return null;
  const stays = decision.kind === 'keep' || decision.kind === 'keep with a lesser change';
  return stays && baseline !== null ? baseline.id : leader.id;
}
