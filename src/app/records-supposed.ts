import { modelledIn } from '../assess/calibration/prior-draws.js';
import { bandOf } from '../assess/certainty/bands.js';
import { EnsembleRun } from '../simulate/ensemble/run-ensemble.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import type { Candidate, Study } from '../study/study.js';
import type { Known } from './records-known.js';

/** Medians of what the model says; null where it says nothing. SI. */
export type Medians = Partial<Record<MeasuredQuantity, number | null>>;

/** Draws in which an input is supposed to be another: enough for the shift of a median, which noise hardly moves. */
const mostDraws = 128;

/** A candidate as it is known, in which one input after the other is supposed to be what it was not taken for. */
export class Supposed {
  private readonly run: EnsembleRun;
  private readonly outcomes: Float64Array[][];

  /** @param quantities what the model is asked for */
  constructor(
    study: Study,
    candidate: Candidate,
    { inputs, columns }: Known,
    private readonly quantities: readonly MeasuredQuantity[],
  ) {
    const drawCount = Math.min(mostDraws, columns[0]?.length ?? 1);
    const places = new Map(inputs.map(({ path }, index) => [path, index]));
    this.run = new EnsembleRun(study, [candidate], drawCount, study.seed, ({ path }) =>
      columns[places.get(path)!]!.slice(0, drawCount),
    );
    this.outcomes = this.run.emptyOutcomes();
  }

  /** Medians with every input as it is known. */
  asKnown(): Medians {
    this.run.run(0, this.run.drawCount, this.outcomes);
    const columns = modelledIn(this.run, this.outcomes[0]!, this.quantities);
    return Object.fromEntries(
      this.quantities.map((quantity) => [quantity, bandOf(columns[quantity]!)?.median ?? null]),
    );
  }

  /** Medians with one input at a value in all draws, SI. */
  with(inputIndex: number, value: number): Medians {
    const column = this.run.columns[inputIndex]!;
    const known = column.slice();
    column.fill(value);
    const medians = this.asKnown();
    column.set(known);
    return medians;
  }
}
