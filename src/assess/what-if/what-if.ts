import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { UncertainInput } from '../../simulate/ensemble/uncertain-inputs.js';
import type { Candidate, Study } from '../../study/study.js';
import { drawnStudy, type NominalJudgement } from '../certainty/drawn-study.js';
import { tier } from '../choosing/drawn-worths.js';

/** More than scores can differ by: what a worse tier costs in the order. */
const tierStep = 4;

/** How candidates stand with one set of inputs. */
export interface Standings {
  /** Score less what failing a limit costs in the order. */
  places: Float64Array;
  /** Score where all limits hold, else 0. */
  utilities: Float64Array;
}

/** A study at nominal figures, one or more of which are tried at other values: quick enough for thousands of tries. */
export class WhatIf {
  readonly inputs: readonly UncertainInput[];
  private readonly run: EnsembleRun;
  private readonly outcomes: Float64Array[][];
  private readonly nominalOutcomes: Float64Array[][];
  private readonly nominal: NominalJudgement[];

  /**
   * @param candidates those whose standing is asked for
   * @param nominal the nominal judgement of each of the study's candidates
   */
  constructor(
    private readonly study: Study,
    candidates: readonly Candidate[],
    nominal: readonly NominalJudgement[],
  ) {
    this.run = new EnsembleRun(study, candidates, 1, study.seed, ({ nominal: figure }) =>
      Float64Array.of(figure),
    );
    this.inputs = this.run.inputs;
    this.outcomes = this.run.emptyOutcomes();
    this.nominalOutcomes = this.run.emptyOutcomes();
    this.run.run(0, 1, this.nominalOutcomes);
    this.nominal = candidates.map(({ id }) => nominal.find(({ judged }) => judged.candidate.id === id)!);
  }

  /** Place of an input among those of this study; below 0 when none of its candidates sees it. */
  indexOf(path: string): number {
    return this.inputs.findIndex((input) => input.path === path);
  }

  /** Standings with one input at a value, all others nominal. */
  at(inputIndex: number, value: number): Standings {
    const input = this.inputs[inputIndex];
    if (input === undefined) return this.nominally();
    const { run, outcomes, nominalOutcomes } = this;
    const column = run.columns[inputIndex]!;
    column[0] = value;
    // A figure of one candidate's own moves no other candidate.
    const mover = input.shared ? -1 : run.candidateIds.indexOf(input.owner ?? '');
    run.run(0, 1, outcomes, mover < 0 ? undefined : mover);
    column[0] = input.nominal;
    return this.standings(mover < 0 ? outcomes : nominalOutcomes.with(mover, outcomes[mover]!));
  }

  /** Standings with a value for every input. */
  with(values: Float64Array): Standings {
    const { run, inputs, outcomes } = this;
    for (let i = 0; i < values.length; i++) run.columns[i]![0] = values[i]!;
    run.run(0, 1, outcomes);
    for (let i = 0; i < values.length; i++) run.columns[i]![0] = inputs[i]!.nominal;
    return this.standings(outcomes);
  }

  /** Standings with every input at its nominal figure. */
  nominally(): Standings {
    return this.standings(this.nominalOutcomes);
  }

  private standings(outcomes: Float64Array[][]): Standings {
    const { scores, limits } = drawnStudy(this.study.criteria, this.nominal, {
      candidateIds: this.run.candidateIds,
      drawCount: 1,
      outcomes,
    });
    const tierOf = (index: number) => limits[index]!.tiers[0]!;
    return {
      places: Float64Array.from(scores, (own, index) => own[0]! - tierStep * tierOf(index)),
      utilities: Float64Array.from(scores, (own, index) => (tierOf(index) < tier.fails ? own[0]! : 0)),
    };
  }
}
