import type { Attempt, ChangeKind, Proposal, Setup } from '../../../src/assess/lesser-changes/proposal.js';
import type { ChangeTools } from '../../../src/assess/lesser-changes/trial.js';
import { standingOf } from '../../../src/assess/lesser-changes/trial.js';
import { simulateCandidate } from '../../../src/simulate/candidate.js';
import type { Study } from '../../../src/study/study.js';
import { plainStudy } from '../../simulate/plain-study.js';

/** The tools that the program hands over. */
export const tools: ChangeTools = {
  simulate: (study, candidate) => simulateCandidate(study, candidate, 'sketch'),
  judge: standingOf,
};

/** A study with its first candidate as the drive of today. */
export function setupOf(parts: Partial<Study> = {}): Setup {
  const study = plainStudy(parts);
  const candidate = study.candidates[0]!;
  return { study: { ...study, baselineId: candidate.id }, candidate };
}

/** The plain study with parts of its feature changed. */
export function withFeature(feature: Partial<Study['feature']>, parts: Partial<Study> = {}): Setup {
  const { study, candidate } = setupOf(parts);
  return { study: { ...study, feature: { ...study.feature, ...feature } }, candidate };
}

export function proposed(kind: ChangeKind, setup: Setup): Proposal {
  const attempt = kind.propose(setup);
  if ('reason' in attempt) throw new Error(attempt.reason);
  return attempt.proposal;
}

export const reasonOf = (attempt: Attempt): string | null => ('reason' in attempt ? attempt.reason : null);

/** The corrected run of a proposal. */
export function runOf(proposal: Proposal) {
  const { study, candidate } = proposal.setup;
  return proposal.corrected(tools.simulate(study, candidate));
}
