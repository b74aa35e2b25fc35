import type { Candidate, Study } from '../../study/study.js';
import { DrawPlan } from '../sampling/draw-plan.js';
import { CandidateKernel } from './candidate-kernel.js';
import { outcomeNames, type SampledInput } from './ensemble.js';
import { packDrawOf } from './pack-draw.js';
import { type UncertainInput, uncertainInputs } from './uncertain-inputs.js';

/** Where the draws of an input come from; `planned` makes those of the study's own spread. */
export type ColumnSource = (input: UncertainInput, planned: () => Float64Array) => Float64Array;

/** A run in plain data: another thread makes the same run of it. */
export interface RunDescription {
  study: Study;
  candidateIds: string[];
  drawCount: number;
  seed: number;
  /** One per input, in their order. */
  columns: Float64Array[];
}

/** A study made ready for draws: its inputs with their columns, and a kernel per candidate. */
export class EnsembleRun {
  readonly inputs: UncertainInput[];
  readonly columns: Float64Array[];
  private readonly work: Study;
  private readonly kernels: CandidateKernel[];
  private readonly candidates: Candidate[];
  private readonly order: number[];
  private planned: DrawPlan | null = null;

  /**
   * @param study the nominal study
   * @param candidates those of its candidates to compute; their inputs and the shared ones are drawn
   * @param drawCount best a power of two
   * @param columnOf one value per draw for each input; may be changed between runs
   */
  constructor(
    private readonly study: Study,
    candidates: readonly Candidate[],
    readonly drawCount: number,
    private readonly seed = study.seed,
    columnOf: ColumnSource = (_, planned) => planned(),
  ) {
    const ids = new Set(candidates.map(({ id }) => id));
    this.inputs = uncertainInputs(study).filter((input) => input.shared || ids.has(input.owner ?? ''));
    this.columns = this.inputs.map((input, index) => columnOf(input, () => this.plan.values(index)));
    // Factors on what is worked out from other numbers come after those.
    this.order = [...this.inputs.keys()].sort(
      (p, q) => Number(this.inputs[p]!.last) - Number(this.inputs[q]!.last),
    );
    this.kernels = candidates.map((candidate) => new CandidateKernel(study, candidate));
    const { provenance: _, ...numbers } = study;
    this.work = { ...structuredClone(numbers), provenance: [] };
    // The chosen pack is one of the packs; a clone keeps that only if it is cloned with them.
    this.candidates = candidates.map(
      (candidate) => this.work.candidates.find(({ id }) => id === candidate.id) as Candidate,
    );
  }

  /** The run that somebody else described. */
  static from({ study, candidateIds, drawCount, seed, columns }: RunDescription): EnsembleRun {
    const candidates = candidateIds.map((id) => study.candidates.find((entry) => entry.id === id)!);
    let next = 0;
    return new EnsembleRun(study, candidates, drawCount, seed, () => columns[next++]!);
  }

  /** This run in plain data, columns not copied. */
  describe(): RunDescription {
    const { study, candidateIds, drawCount, seed, columns } = this;
    return { study, candidateIds, drawCount, seed, columns };
  }

  /**
   * Compute draws `from` to before `to` into columns of outcomes. Each draw depends on its own inputs only, so the
   * range may be split among workers in any way.
   * @param outcomes `[candidate][outcome]`, a column of `drawCount` each
   * @param only index of the one candidate to compute; all of them when left out
   */
  run(from: number, to: number, outcomes: Float64Array[][], only?: number): void {
    const first = only ?? 0;
    const end = only === undefined ? this.kernels.length : only + 1;
    for (let draw = from; draw < to; draw++) {
      const work = this.studyAt(draw);
      const pack = packDrawOf(work);
      for (let c = first; c < end; c++) {
        this.kernels[c]!.run(work, this.candidates[c]!, pack, outcomes[c]!, draw);
      }
    }
  }

  /** The study with the numbers of one draw in place; the next draw writes over them. */
  studyAt(draw: number): Study {
    const { work, order, inputs, columns } = this;
    for (const index of order) inputs[index]!.set(work, columns[index]![draw]!);
    return work;
  }

  /** The draws of all inputs, as kept with the results. */
  sampledInputs(): SampledInput[] {
    return this.inputs.map(({ path, field, owner, shared }, index) => {
      return { path, field, owner, shared, values: this.columns[index]! };
    });
  }

  /** Made when it is first asked for: draws that come from elsewhere need none. */
  private get plan(): DrawPlan {
    this.planned ??= new DrawPlan(this.inputs, this.seed, this.drawCount);
    return this.planned;
  }

  get scheme() {
    return this.plan.scheme;
  }

  get candidateIds(): string[] {
    return this.candidates.map(({ id }) => id);
  }

  /**
   * Empty columns for `run`.
   * @param column makes one; by default for this thread only
   */
  emptyOutcomes(
    column: (length: number) => Float64Array = (length) => new Float64Array(length),
  ): Float64Array[][] {
    return this.candidates.map(() => outcomeNames.map(() => column(this.drawCount)));
  }
}
