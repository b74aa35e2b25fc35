import type { CandidateRun } from '../../simulate/outcome.js';
import type { ChangeBurden } from './lesser-change.js';

/**
 * Whether cost is left out where changes are compared, because the price of one of them is not known. Counted as
 * nothing it would speak for that change, and a cost that is worth nothing would speak against it; so until the price
 * is filled in the cost of no change counts, and each keeps what cost is worth to the drive of today.
 */
export function isCostLeftOut(changes: readonly { burden: ChangeBurden }[]): boolean {
  return changes.some(({ burden }) => burden.costMoney === null);
}

/** A run that costs what another costs: what cost is worth is then the same for both. */
export function costingAs(run: CandidateRun, other: CandidateRun): CandidateRun {
  return { ...run, nominal: { ...run.nominal, cost: other.nominal.cost } };
}
