import { candidateDraws } from '../assess/calibration/candidate-draws.js';
import type { ModelledDraws } from '../assess/calibration/prior-draws.js';
import { quantileOf } from '../assess/certainty/bands.js';
import type { Threads } from '../assess/threads.js';
import { quantile } from '../quantity/quantile.js';
import { EnsembleRun } from '../simulate/ensemble/run-ensemble.js';
import type { UncertainInput } from '../simulate/ensemble/uncertain-inputs.js';
import type { Candidate, Study } from '../study/study.js';
import { measurable } from './records-measured.js';

/** What a record knows of the inputs of one candidate: its draws, or nominal figures where it holds none. */
export interface Known {
  basis: 'draws' | 'nominal';
  inputs: readonly UncertainInput[];
  /** One value per draw for each input; a single one where nothing was drawn. */
  columns: readonly Float64Array[];
  /** Value of an input, SI, below which it lies with a probability. */
  valueAt(inputIndex: number, share: number): number;
}

/** What the draws know, calibration included; with what they say of everything that can be measured. */
export type Drawn = Known & Pick<ModelledDraws, 'modelled'>;

/** The draws behind the results of a study; null where those carry no bands. */
export function knownFromDraws(study: Study, candidate: Candidate, threads?: Threads): Drawn | null {
  const draws = candidateDraws(study, candidate, measurable, threads);
  if (draws === null) return null;
  const { inputs, columns, modelled } = draws;
  const sorted = columns.map((column) => column.slice().sort());
  const valueAt = (index: number, share: number) => quantileOf(sorted[index]!, share);
  return { basis: 'draws', inputs, columns, modelled, valueAt };
}

/** Nominal figures, each known as well as its own spread says. */
export function knownNominally(study: Study, candidate: Candidate): Known {
  const nominal = ({ nominal: figure }: UncertainInput) => Float64Array.of(figure);
  const { inputs, columns } = new EnsembleRun(study, [candidate], 1, study.seed, nominal);
  const valueAt = (index: number, share: number) => {
    const input = inputs[index]!;
    return quantile(input.spread, input.nominal, share, input.bounds ?? undefined);
  };
  return { basis: 'nominal', inputs, columns, valueAt };
}
