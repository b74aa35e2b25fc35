import type { Criterion } from '../study/choosing.js';
import type { CriterionOutcome } from './assessment.js';
import { weightedCriteria } from './scores.js';

export { compareForRank } from './choosing/rank-order.js';

/**
 * Ids of the candidates that no other one beats everywhere: none is at least as good on every weighted
 * criterion and better on one. A candidate that fails a hard limit neither belongs to the set nor beats
 * anybody; a missing figure loses against any figure. Compared on the figures, not on their clipped worth.
 */
export function nonDominatedIds(
  candidates: { id: string; passes: boolean | null; criteria: CriterionOutcome[] }[],
  criteria: Criterion[],
): Set<string> {
  const eligible = candidates.filter((candidate) => candidate.passes !== false);
  const goodness = eligible.map((candidate) =>
    weightedCriteria(criteria).map((criterion) => goodnessOf(criterion, candidate.criteria)),
  );
  const stands = (index: number) =>
    !goodness.some((other, at) => at !== index && beatsEverywhere(other, goodness[index] as number[]));
  return new Set(eligible.filter((_, index) => stands(index)).map((candidate) => candidate.id));
}

/** The figure, turned so that more is better; endless for a figure without an end, worst for a missing one. */
function goodnessOf({ id, worthless, worthFull }: Criterion, outcomes: CriterionOutcome[]): number {
  const outcome = outcomes.find(({ criterion }) => criterion === id);
  if (outcome === undefined || outcome.missing !== undefined) return Number.NEGATIVE_INFINITY;
  if (worthless === null || worthFull === null) return Number.NEGATIVE_INFINITY;
  const value = outcome.value ?? Number.POSITIVE_INFINITY;
  return worthFull >= worthless ? value : -value;
}

function beatsEverywhere(a: number[], b: number[]): boolean {
  return (
    a.every((good, index) => good >= (b[index] as number)) && a.some((good, i) => good > (b[i] as number))
  );
}
