import { changeKinds } from './kinds.js';
import type { LesserChange, LesserChanges } from './lesser-change.js';
import { bestPairs, helps } from './pairs.js';
import type { Proposal, Setup } from './proposal.js';

/**
 * A change of the ladder, or the best pair, worked out once more for the setup that it was tried on.
 * @returns null where it makes no sense there
 */
export function proposalOf(
  { parts }: Pick<LesserChange, 'parts'>,
  { ladder, passesBefore }: Pick<LesserChanges, 'ladder' | 'passesBefore'>,
  setup: Setup,
): Proposal | null {
  if (parts.length > 1) {
    const helpful = ladder.filter((change) => helps(change, passesBefore));
    return bestPairs(helpful, setup).find((pair) => pair.parts.join() === parts.join()) ?? null;
  }
  const attempt = changeKinds[parts[0]!].propose(setup);
  return 'proposal' in attempt ? attempt.proposal : null;
}
