import { outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import { type ColumnSource, EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { UncertainInput } from '../../simulate/ensemble/uncertain-inputs.js';
import type { MeasuredQuantity } from '../../study/choosing.js';
import type { Candidate, Study } from '../../study/study.js';
import { alone, type Threads } from '../threads.js';
import { modelled } from './modelled.js';

/** Draws of the drive of today alone that are compared with what was measured. (M21) */
const priorDrawCount = 32768;

/** One candidate in its draws, with what the model says of whatever can be measured on it. */
export interface ModelledDraws {
  drawCount: number;
  /** What it shares with the other candidates, and its own figures. */
  inputs: readonly UncertainInput[];
  /** One value per draw for each input. */
  columns: readonly Float64Array[];
  /** What the model says in each draw. */
  modelled: ModelledColumns;
}

/** The drive of today as it was believed before anything was measured. */
export type PriorDraws = ModelledDraws;

/** One value per draw for each quantity that was asked for; NaN where it does not occur. */
export type ModelledColumns = Partial<Record<MeasuredQuantity, Float64Array>>;

/** How draws of one candidate are made. */
interface Drawing {
  drawCount?: number;
  threads?: Threads | undefined;
  /** Left out, the draws are those of the study's own spreads. */
  columnOf?: ColumnSource;
}

/**
 * Draws the drive of today, or another candidate.
 * @param quantities what the model is asked for
 */
export function priorDraws(
  study: Study,
  candidate: Candidate,
  quantities: readonly MeasuredQuantity[],
  { drawCount = priorDrawCount, threads = alone, columnOf }: Drawing = {},
): PriorDraws {
  const run = new EnsembleRun(study, [candidate], drawCount, study.seed, columnOf);
  const [outcomes] = threads.beginDraws(run)();
  const { inputs, columns } = run;
  return { drawCount, inputs, columns, modelled: modelledIn(run, outcomes!, quantities) };
}

/** What the model says in each draw of a run of one candidate. */
export function modelledIn(
  run: EnsembleRun,
  outcomes: readonly Float64Array[],
  quantities: readonly MeasuredQuantity[],
): ModelledColumns {
  const [id] = run.candidateIds;
  const columns = Object.fromEntries(
    quantities.map((quantity) => [quantity, new Float64Array(run.drawCount)]),
  );
  for (let draw = 0; draw < run.drawCount; draw++) {
    const study = run.studyAt(draw);
    const candidate = study.candidates.find((entry) => entry.id === id)!;
    const outcome = (name: keyof typeof outcomeIndex) => outcomes[outcomeIndex[name]]![draw]!;
    for (const quantity of quantities)
      columns[quantity]![draw] = modelled[quantity]({ outcome, study, candidate });
  }
  return columns;
}
