import type { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { UncertainInput } from '../../simulate/ensemble/uncertain-inputs.js';
import type { Study } from '../../study/study.js';
import { quantileOf } from '../certainty/bands.js';
import { shownAs } from '../what-if/shown-value.js';

/** A factor on a guess counts as found out by the readings when its middle is so far from 1. */
const surelyMoved = 0.05;

/**
 * The study with every uncertain number in the middle of its draws: what single figures are computed from once
 * something was measured, so that no page goes on saying what a reading has refuted. The listings of all candidates
 * are taken at their middle, not only that of the drive that was measured: else the others would be compared with it
 * by figures as flattering as they were listed.
 * @param run the draws that agree with the readings; none needs to be computed yet
 */
export function believedStudy(study: Study, run: EnsembleRun): Study {
  const { provenance, ...numbers } = study;
  const believed: Study = { ...structuredClone(numbers), provenance };
  const middles = new Map<string, number>();
  run.inputs.forEach((input, index) => {
    const middle = quantileOf(run.columns[index]!.slice().sort(), 0.5);
    if (!counts(input, middle, study)) return;
    input.set(believed, middle);
    middles.set(input.path, middle);
  });
  believed.provenance = provenance.map((entry) => {
    const middle = middles.get(entry.path);
    return middle === undefined ? entry : { ...entry, value: middle, shown: shownAs(entry)(middle) };
  });
  return believed;
}

/** What was guessed stays a guess, unless it belongs to what was measured and the readings say otherwise. */
function counts({ last, owner, nominal }: UncertainInput, middle: number, { baselineId }: Study): boolean {
  if (!last) return true;
  return (owner === null || owner === baselineId) && Math.abs(middle / nominal - 1) > surelyMoved;
}
