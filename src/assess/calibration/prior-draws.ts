import { outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { UncertainInput } from '../../simulate/ensemble/uncertain-inputs.js';
import type { MeasuredQuantity } from '../../study/choosing.js';
import type { Candidate, Study } from '../../study/study.js';
import { alone, type Threads } from '../threads.js';
import { modelled } from './modelled.js';

/** Draws of the drive of today alone that are compared with what was measured. (M21) */
const priorDrawCount = 32768;

/** The drive of today as it was believed before anything was measured. */
export interface PriorDraws {
  drawCount: number;
  /** What it shares with the other candidates, and its own figures. */
  inputs: readonly UncertainInput[];
  /** One value per draw for each input. */
  columns: readonly Float64Array[];
  /** What the model says in each draw. */
  modelled: Partial<Record<MeasuredQuantity, Float64Array>>;
}

/**
 * Draws the drive of today from the study's own spreads.
 * @param quantities what the model is asked for
 */
export function priorDraws(
  study: Study,
  baseline: Candidate,
  quantities: readonly MeasuredQuantity[],
  { drawCount = priorDrawCount, threads = alone }: { drawCount?: number; threads?: Threads | undefined } = {},
): PriorDraws {
  const run = new EnsembleRun(study, [baseline], drawCount);
  const [outcomes] = threads.beginDraws(run)();
  const columns = Object.fromEntries(quantities.map((quantity) => [quantity, new Float64Array(drawCount)]));
  for (let draw = 0; draw < drawCount; draw++) {
    const drawn = run.studyAt(draw);
    const candidate = drawn.candidates.find(({ id }) => id === baseline.id)!;
    const outcome = (name: keyof typeof outcomeIndex) => outcomes![outcomeIndex[name]]![draw]!;
    for (const quantity of quantities) {
      columns[quantity]![draw] = modelled[quantity]({ outcome, study: drawn, candidate });
    }
  }
  return { drawCount, inputs: run.inputs, columns: run.columns, modelled: columns };
}
