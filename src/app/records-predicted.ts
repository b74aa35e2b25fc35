import { modelled } from '../assess/calibration/modelled.js';
import { bandOf } from '../assess/certainty/bands.js';
import type { OutcomeName } from '../simulate/ensemble/ensemble.js';
import type { NominalOutcome } from '../simulate/outcome.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import type { Candidate, Study } from '../study/study.js';
import type { RecordedCandidate } from './records-figures.js';
import type { Drawn } from './records-known.js';
import { measurable } from './records-measured.js';

/** What a record predicts of one quantity. SI. */
export interface Prediction {
  /** The median of the draws, or the nominal figure; null where it predicts nothing. */
  value: number | null;
  /** What eight draws in ten lie between; null where nothing was drawn. */
  band: { p10: number; p90: number } | null;
}

/** What a record predicts for the things that can be measured on the day. */
export type Predictions = Record<MeasuredQuantity, Prediction>;

/** What each prediction counts, in a few words. */
export const predictionWords: Record<MeasuredQuantity, string> = {
  runtime: 'until the run on a pack ends',
  hold_current: 'all drives, nothing else',
  rest_current: 'whole pack, lights off',
  move_time: 'all moves of one loop',
  loop_charge: 'whole pack, one loop',
  case_temperature: 'hottest case in the show',
};

/** Predictions that stand in the results under a name of their own. */
const filedAs: Partial<Record<MeasuredQuantity, OutcomeName>> = {
  runtime: 'runtimeS',
  hold_current: 'holdPackCurrentA',
  case_temperature: 'caseTemperatureK',
};

/** Medians and bands: as filed where they were, else from the same draws made anew. */
export function drawnPredictions(filed: RecordedCandidate, { modelled: columns }: Drawn): Predictions {
  return predictionsOf((quantity) => {
    const name = filedAs[quantity];
    const band = (name && filed.uncertain[name]) ?? bandOf(columns[quantity]!);
    return band === null
      ? { value: null, band: null }
      : { value: band.median, band: { p10: band.p10, p90: band.p90 } };
  });
}

/** Nominal figures, where results hold no draws. */
export function nominalPredictions(
  study: Study,
  candidate: Candidate,
  nominal: Partial<NominalOutcome>,
): Predictions {
  const outcome = (name: OutcomeName): number => {
    const figure = nominal[name as keyof NominalOutcome];
    return typeof figure === 'number' ? figure : Number.NaN;
  };
  return predictionsOf((quantity) => {
    const value = modelled[quantity]({ outcome, study, candidate });
    return { value: Number.isFinite(value) ? value : null, band: null };
  });
}

const predictionsOf = (predict: (quantity: MeasuredQuantity) => Prediction): Predictions =>
  Object.fromEntries(measurable.map((quantity) => [quantity, predict(quantity)])) as Predictions;
