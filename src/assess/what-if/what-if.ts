import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { UncertainInput } from '../../simulate/ensemble/uncertain-inputs.js';
import type { Candidate, Study } from '../../study/study.js';
import { type DrawnStudy, drawnStudy, type NominalJudgement } from '../certainty/drawn-study.js';
import { tier } from '../choosing/drawn-worths.js';

/** More than scores can differ by: what a worse tier costs in the order. */
const tierStep = 4;

/** How candidates stand with one set of inputs. */
export interface Standings {
  /** Score less what failing a limit costs in the order. */
  places: Float64Array;
  /** Score where no limit is broken, else 0. */
  utilities: Float64Array;
}

/** A study at nominal figures, one or more of which are tried at other values: quick enough for thousands of tries. */
export class WhatIf {
  readonly inputs: readonly UncertainInput[];
  private readonly run: EnsembleRun;
  private readonly outcomes: Float64Array[][];
  private readonly nominalOutcomes: Float64Array[][];
  private readonly nominal: NominalJudgement[];
  /** For several draws; made when it is first asked for. */
  private drawn: EnsembleRun | null = null;

  /**
   * @param candidates those whose standing is asked for
   * @param nominal the nominal judgement of each of the study's candidates
   */
  constructor(
    private readonly study: Study,
    private readonly candidates: readonly Candidate[],
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

  /** Standings with every input at its nominal figure. */
  nominally(): Standings {
    return this.standings(this.nominalOutcomes);
  }

  /**
   * Utilities over several draws of all inputs: per candidate one value per draw, its score where no limit is broken,
   * else 0.
   * @param columns per input one value per draw
   */
  over(columns: readonly Float64Array[], drawCount: number): Float64Array[] {
    const { study, candidates } = this;
    if (this.drawn?.drawCount !== drawCount) {
      const column = () => new Float64Array(drawCount);
      this.drawn = new EnsembleRun(study, candidates, drawCount, study.seed, column);
    }
    const run = this.drawn;
    columns.forEach((column, index) => {
      run.columns[index]!.set(column);
    });
    const outcomes = run.emptyOutcomes();
    run.run(0, drawCount, outcomes);
    return utilities(this.judged(outcomes, drawCount));
  }

  private standings(outcomes: Float64Array[][]): Standings {
    const judged = this.judged(outcomes, 1);
    const { scores, limits } = judged;
    return {
      places: Float64Array.from(scores, (own, index) => own[0]! - tierStep * limits[index]!.tiers[0]!),
      utilities: Float64Array.from(utilities(judged), (own) => own[0]!),
    };
  }

  private judged(outcomes: Float64Array[][], drawCount: number): DrawnStudy {
    const { candidateIds } = this.run;
    return drawnStudy(this.study.criteria, this.nominal, { candidateIds, drawCount, outcomes });
  }
}

/** Per candidate and draw the score where no limit is broken, else 0. */
const utilities = ({ scores, limits }: DrawnStudy): Float64Array[] =>
  scores.map((own, index) =>
    own.map((score, draw) => (limits[index]!.tiers[draw]! < tier.fails ? score : 0)),
  );
