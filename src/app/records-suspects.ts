import { benchWork, measuredField } from '../assess/bench-work.js';
import { howToMeasure } from '../input/how-to-measure.js';
import { inverseNormalShare } from '../quantity/normal.js';
import { sigmasInHalfWidth } from '../quantity/spread.js';
import type { UncertainInput } from '../simulate/ensemble/uncertain-inputs.js';
import type { MeasuredQuantity, Measurement } from '../study/choosing.js';
import type { Candidate, Study } from '../study/study.js';
import { agrees } from './records-band.js';
import type { Known } from './records-known.js';
import type { Predictions } from './records-predicted.js';
import { type Medians, Supposed } from './records-supposed.js';

/** An input that may have been wrong, at the value that explains the measurements best. */
export interface Suspect {
  input: Pick<UncertainInput, 'path' | 'field' | 'owner'>;
  /** What was known of it, calibration included. SI. */
  known: { p10: number; median: number; p90: number };
  /** SI, inside the 10–90 % of what was known. */
  value: number;
  /** Share of the misfit of the readings that do not agree that is gone with it, 0…1. */
  explainedFraction: number;
  /** What it predicts then. */
  predicted: Medians;
  /** What to measure to be sure; null where it cannot be measured. */
  measure: { field: string; instrument: string; how: string } | null;
}

/** Shares of the spread that are tried first, and how often the best is searched more finely. */
const tried = [0.1, 0.3, 0.5, 0.7, 0.9];
const refinements = 3;

/** A smaller share explains nothing. */
const worthNaming = 0.02;

/**
 * The inputs that were most likely wrong, most likely first: in the draws that the record knows, each is moved alone
 * through the 10–90 % of what is known of it and taken where misfit and distance from its middle are together
 * smallest. A reading that agrees asks for no explanation; an input that explains another may not move it away.
 *
 * @param candidate the one on which it was measured
 * @param predicted what the record states; a moved input shifts it
 */
export function suspects(
  study: Study,
  candidate: Candidate,
  known: Known,
  predicted: Predictions,
  measured: readonly Measurement[],
): Suspect[] {
  const quantities = measured.map(({ quantity }) => quantity);
  const stated = Object.fromEntries(quantities.map((quantity) => [quantity, predicted[quantity].value]));
  const off = measured.filter(({ quantity, value, halfWidth }) => {
    const { value: middle, band } = predicted[quantity];
    return !agrees({ value, halfWidth, predicted: middle, band });
  });
  if (off.length === 0) return [];
  const supposed = new Supposed(study, candidate, known, quantities);
  const start = supposed.asKnown();
  const predict = (inputIndex: number, value: number) =>
    shifted(stated, start, supposed.with(inputIndex, value));
  return known.inputs
    .flatMap((input, index) => {
      const valueAt = (share: number) => known.valueAt(index, share);
      const best = bestShift(valueAt, (value) => predict(index, value), measured);
      return best === null ? [] : [{ input, best, valueAt }];
    })
    .sort((a, b) => a.best.cost - b.best.cost)
    .map(({ input: { path, field, owner }, best, valueAt }) => ({
      input: { path, field, owner },
      known: { p10: valueAt(0.1), median: valueAt(0.5), p90: valueAt(0.9) },
      value: best.value,
      explainedFraction: 1 - misfit(best.predicted, off) / misfit(stated, off),
      predicted: best.predicted,
      measure: measureOf(field, path, candidate),
    }))
    .filter(({ explainedFraction }) => explainedFraction > worthNaming);
}

/** What is stated, moved by as much as the medians of the draws move; infinitely far off where they cease. */
function shifted(stated: Medians, start: Medians, moved: Medians): Medians {
  const quantities = Object.keys(stated) as MeasuredQuantity[];
  return Object.fromEntries(
    quantities.map((quantity) => {
      const [from, before, after] = [stated[quantity], start[quantity], moved[quantity]];
      if (from == null || before == null) return [quantity, null];
      return [quantity, after == null ? Number.POSITIVE_INFINITY : from + after - before];
    }),
  );
}

/**
 * Σ ((predicted − measured) / σ)² over what is predicted at all; the reading's own spread is σ.
 * A reading without a spread counts as known to a millionth.
 */
export function misfit(predicted: Medians, measured: readonly Measurement[]): number {
  let sum = 0;
  for (const { quantity, value, halfWidth } of measured) {
    const expected = predicted[quantity] ?? null;
    if (expected === null) continue;
    const sigma = Math.max(halfWidth / sigmasInHalfWidth, Math.abs(value) * 1e-6, 1e-12);
    sum += ((expected - value) / sigma) ** 2;
  }
  return sum;
}

interface Shift {
  share: number;
  value: number;
  predicted: Medians;
  misfit: number;
  cost: number;
}

/** Where an input explains the measurements best; null when it moves nothing. */
function bestShift(
  valueAt: (share: number) => number,
  predict: (value: number) => Medians,
  measured: readonly Measurement[],
): Shift | null {
  const at = (share: number): Shift => {
    const value = valueAt(share);
    const predicted = predict(value);
    const left = misfit(predicted, measured);
    return { share, value, predicted, misfit: left, cost: left + inverseNormalShare(share) ** 2 };
  };
  const shifts = tried.map(at);
  // An input that moves nothing needs no closer look.
  if (shifts.every((shift) => shift.misfit === shifts[0]!.misfit)) return null;
  let best = shifts.reduce((a, b) => (b.cost < a.cost ? b : a));
  for (let step = 0.1, round = 0; round < refinements; round++, step /= 2) {
    const near = [best.share - step, best.share + step].filter((share) => share >= 0.1 && share <= 0.9);
    for (const shift of near.map(at)) if (shift.cost < best.cost) best = shift;
  }
  return best;
}

function measureOf(field: string, path: string, candidate: Candidate): Suspect['measure'] {
  const wanted = measuredField(field);
  const kind = path.startsWith('candidates.') ? candidate.kind : null;
  const [bench, told] = [benchWork(wanted), howToMeasure(wanted, kind)];
  return bench === null || told === null
    ? null
    : { field: wanted, instrument: bench.instrument, how: told.how };
}
