import type { Criterion } from '../study/choosing.js';
import type { CriterionOutcome } from './assessment.js';
import { criterionValue, type Judged } from './criterion-values.js';

export { scoreOf } from './choosing/rank-order.js';

/**
 * Partial value of a figure on a fixed scale: linear between the two ends, clipped to 0…1. (M22)
 * The ends may stand in either order; equal ends make a step at that value, full worth on it.
 */
export function worthOf(value: number, worthless: number, worthFull: number): number {
  if (worthless === worthFull) return value >= worthFull ? 1 : 0;
  return Math.min(1, Math.max(0, (value - worthless) / (worthFull - worthless)));
}

/** Every weighted criterion of one candidate with its worth; a figure that does not occur is worth 0 and named. */
export function criterionOutcomes(judged: Judged): CriterionOutcome[] {
  return weightedCriteria(judged.study.criteria).map((criterion) => {
    const { id, weightScore, worthless, worthFull } = criterion;
    const { value, missing } = criterionValue(id, judged);
    const outcome = { criterion: id, value, weightScore };
    if (value === null) return { ...outcome, worthScore: 0, missing: missing ?? id };
    if (worthless === null || worthFull === null) {
      return { ...outcome, worthScore: 0, missing: `worth_0_at and worth_1_at of ${id} in criteria.csv` };
    }
    const shown = Number.isFinite(value) ? value : null;
    return { ...outcome, value: shown, worthScore: worthOf(value, worthless, worthFull) };
  });
}

/** Criteria that count in the score, not only as a limit. */
export function weightedCriteria(criteria: Criterion[]): Criterion[] {
  return criteria.filter((criterion) => criterion.weightScore > 0);
}
