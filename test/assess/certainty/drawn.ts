import type { CandidateAssessment, LimitOutcome } from '../../../src/assess/assessment.js';
import type { DrawnCandidate } from '../../../src/assess/certainty/drawn-figures.js';
import { type OutcomeName, outcomeIndex, outcomeNames } from '../../../src/simulate/ensemble/ensemble.js';
import { candidate, run, study } from '../hand-made.js';

/** Columns of one candidate: every draw feasible, everything else as given, or 1. */
export function columnsOf(drawCount: number, given: Partial<Record<OutcomeName, number[]>>): Float64Array[] {
  const columns = outcomeNames.map(() => new Float64Array(drawCount).fill(1));
  for (const [name, values] of Object.entries(given)) {
    columns[outcomeIndex[name as OutcomeName]] = Float64Array.from(values);
  }
  return columns;
}

/** A candidate with hand-made draws. */
export function drawn(
  id: string,
  drawCount: number,
  given: Partial<Record<OutcomeName, number[]>>,
): DrawnCandidate {
  const own = candidate(id);
  return {
    judged: { study: study([own], []), candidate: own, run: run(id) },
    columns: columnsOf(drawCount, given),
  };
}

/** A limit as judged from nominal figures. */
export const limit = (
  criterion: LimitOutcome['criterion'],
  bound: number,
  passes: boolean | null = true,
  direction: LimitOutcome['direction'] = 'at-least',
): LimitOutcome => ({ criterion, direction, limit: bound, value: null, passes, margin: null });

/** A candidate as the ranking has it. */
export function ranked(id: string, changes: Partial<CandidateAssessment> = {}): CandidateAssessment {
  const { motor, nominal, series } = run(id);
  return {
    id,
    label: id,
    type: 'worm-gearmotor',
    isBaseline: id === 'now',
    rank: 1,
    passes: true,
    score: 0.5,
    nonDominated: true,
    limits: [],
    criteria: [],
    findings: [],
    assumed: [],
    motor,
    nominal,
    uncertain: {},
    acceptability: [],
    series,
    ...changes,
  };
}
