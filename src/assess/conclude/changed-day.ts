import { simulateCandidate } from '../../simulate/candidate.js';
import type { NominalOutcome } from '../../simulate/outcome.js';
import type { Study } from '../../study/study.js';
import type { DayPlan } from '../day/day-plan.js';
import { drawnDay } from '../day/drawn-day.js';
import { planDay } from '../day/plan-day.js';
import type { LesserChangeId, LesserChanges } from '../lesser-changes/lesser-change.js';
import { proposalOf } from '../lesser-changes/proposal-of.js';
import { withProposal } from '../lesser-changes/trial.js';

/**
 * The event day with the drive of today and a lesser change.
 * @param parts of the change: one, or two of a pair
 * @param columns draws of that drive without the change, one column per outcome
 * @param nominal its figures without the change
 * @returns null without a change, or without a day
 */
export function changedDay(
  study: Study,
  parts: readonly LesserChangeId[],
  changes: LesserChanges | null,
  columns: readonly Float64Array[] | undefined,
  nominal: NominalOutcome | undefined,
): DayPlan | null {
  if (changes === null || parts.length === 0) return null;
  const candidate = study.candidates.find(({ id }) => id === changes.candidate)!;
  const proposal = proposalOf({ parts: [...parts] }, changes, { study, candidate });
  if (proposal === null) return null;
  const { setup, packsInTurnCount } = proposal;
  const run = withProposal(simulateCandidate(setup.study, setup.candidate), proposal);
  const changed = { ...setup.study, packsCarriedCount: packsInTurnCount };
  const drawn = columns && drawnDay(changed, setup.candidate, run.nominal, columns, nominal);
  return planDay(changed, setup.candidate, run.nominal, drawn, study.pack);
}
