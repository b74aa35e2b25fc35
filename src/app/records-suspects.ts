import { benchWork, measuredField } from '../assess/bench-work.js';
import { valueAt, withValueAt } from '../assess/value-at-path.js';
import { howToMeasure } from '../input/how-to-measure.js';
import { inverseNormalShare } from '../quantity/normal.js';
import { quantile } from '../quantity/quantile.js';
import { sigmasInHalfWidth } from '../quantity/spread.js';
import type { Measurement } from '../study/choosing.js';
import type { Provenance } from '../study/provenance.js';
import type { Candidate, Study } from '../study/study.js';
import { type Predictions, predictions, type Simulate } from './records-predicted.js';

/** An input that may have been wrong, at the value that explains the measurements best. */
export interface Suspect {
  provenance: Provenance;
  /** SI, inside the 10–90 % of the input. */
  value: number;
  /** Share of the misfit that is gone with it, 0…1. */
  explainedFraction: number;
  /** What it predicts then. */
  predicted: Predictions;
  /** What to measure to be sure; null where it cannot be measured. */
  measure: { field: string; instrument: string; how: string } | null;
}

/** Shares of the spread that are tried first, and how often the best is searched more finely. */
const tried = [0.1, 0.3, 0.5, 0.7, 0.9];
const refinements = 3;

/** A smaller share explains nothing. */
const worthNaming = 0.02;

/**
 * The inputs that were most likely wrong, most likely first: each is moved alone through its 10–90 % and taken where
 * misfit and distance from its middle are together smallest.
 *
 * @param candidate the one on which it was measured
 * @param simulate how a candidate is simulated; called about ten times for each input with a spread
 */
export function suspects(
  study: Study,
  candidate: Candidate,
  measured: readonly Measurement[],
  simulate: Simulate,
): Suspect[] {
  const predict = (changed: Study) =>
    predictions(changed, simulate(changed, changed.candidates.find(({ id }) => id === candidate.id)!));
  const before = misfit(predict(study), measured);
  if (before === 0) return [];
  const found = study.provenance
    .filter((entry) => isConcerned(entry, study, candidate))
    .flatMap((entry) => bestShift(study, entry, measured, predict) ?? []);
  return found
    .sort((a, b) => a.cost - b.cost)
    .map(({ suspect, misfit: after }) => ({ ...suspect, explainedFraction: 1 - after / before }))
    .filter(({ explainedFraction }) => explainedFraction > worthNaming)
    .map((suspect) => ({ ...suspect, measure: measureOf(suspect.provenance, candidate) }));
}

/**
 * Σ ((predicted − measured) / σ)² over what is predicted at all; the reading's own spread is σ.
 * A reading without a spread counts as known to a millionth.
 */
export function misfit(predicted: Predictions, measured: readonly Measurement[]): number {
  let sum = 0;
  for (const { quantity, value, halfWidth } of measured) {
    const expected = predicted[quantity];
    if (expected === null) continue;
    const sigma = Math.max(halfWidth / sigmasInHalfWidth, Math.abs(value) * 1e-6, 1e-12);
    sum += ((expected - value) / sigma) ** 2;
  }
  return sum;
}

/** Whether a value can move the predictions for a candidate: its own, or one that all share. */
function isConcerned({ path, spread }: Provenance, study: Study, { id }: Candidate): boolean {
  if (spread === null || spread.shape === 'exact' || path.startsWith('measured.')) return false;
  if (path.startsWith('packs.')) return false;
  const owner = study.candidates.find((entry) => path.startsWith(`candidates.${entry.id}.`));
  return owner === undefined || owner.id === id;
}

interface Shift {
  suspect: Omit<Suspect, 'explainedFraction' | 'measure'>;
  misfit: number;
  cost: number;
}

/** Where an input explains the measurements best; null when it cannot be moved. */
function bestShift(
  study: Study,
  provenance: Provenance,
  measured: readonly Measurement[],
  predict: (study: Study) => Predictions,
): Shift | null {
  const nominal = valueAt(study, provenance.path);
  if (nominal === null) return null;
  const at = (share: number): (Shift & { share: number }) | null => {
    const value = quantile(provenance.spread, nominal, share);
    const changed = withValueAt(study, provenance.path, value);
    if (changed === null) return null;
    const predicted = predict(changed);
    const left = misfit(predicted, measured);
    const cost = left + inverseNormalShare(share) ** 2;
    return { suspect: { provenance, value, predicted }, misfit: left, cost, share };
  };
  const shifts = tried.flatMap((share) => at(share) ?? []);
  // An input that moves nothing needs no closer look.
  if (shifts.length < tried.length || shifts.every((shift) => shift.misfit === shifts[0]!.misfit))
    return null;
  let best = shifts.reduce((a, b) => (b.cost < a.cost ? b : a));
  for (let step = 0.1, round = 0; round < refinements; round++, step /= 2) {
    const near = [best.share - step, best.share + step].filter((share) => share >= 0.1 && share <= 0.9);
    for (const shift of near.flatMap((share) => at(share) ?? [])) if (shift.cost < best.cost) best = shift;
  }
  return best;
}

function measureOf({ field, path }: Provenance, candidate: Candidate): Suspect['measure'] {
  const wanted = measuredField(field);
  const kind = path.startsWith('candidates.') ? candidate.kind : null;
  const [bench, told] = [benchWork(wanted), howToMeasure(wanted, kind)];
  return bench === null || told === null
    ? null
    : { field: wanted, instrument: bench.instrument, how: told.how };
}
