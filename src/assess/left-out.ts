import type { CandidateRun } from '../simulate/outcome.js';
import type { Criterion, ViewWeights } from '../study/choosing.js';
import type { Study } from '../study/study.js';
import { blankBehind, type Judged } from './criterion-values.js';
import { limitsOf, passesAll } from './limits.js';

/**
 * The study with no weight on criteria that a blank cell keeps from being known for a candidate.
 *
 * A blank worth nothing would speak against whoever left it, and for the drive of today, about which most is known; a
 * middle value would be a guess that decides. So such a criterion counts for nobody until the cell is filled in, and
 * the others share the weight. A drive that cannot do the job at all has no say in this.
 * @param runs one for each candidate
 */
export function leaveOutBlanks(study: Study, runs: readonly CandidateRun[]): Study {
  return { ...study, criteria: study.criteria.map((criterion) => counting(criterion, study, runs)) };
}

/** Other people's weights without the criteria that the study leaves out; a view that keeps none is gone. */
export function viewsWithoutBlanks(
  views: readonly ViewWeights[],
  study: Study,
  runs: readonly CandidateRun[],
): ViewWeights[] {
  return views
    .map((view) => ({
      ...view,
      criteria: view.criteria.filter(({ id }) => blanksBehind(id, study, runs).length === 0),
    }))
    .filter(({ criteria }) => criteria.length > 0);
}

function counting(given: Criterion, study: Study, runs: readonly CandidateRun[]): Criterion {
  const { leftOut, ...criterion } = given;
  const weightScore = leftOut?.weightScore ?? criterion.weightScore;
  const blanks = blanksBehind(criterion.id, study, runs);
  const isWeighed = weightScore > 0 || criterion.worthless !== null;
  if (blanks.length === 0 || !isWeighed) return { ...criterion, weightScore };
  return { ...criterion, weightScore: 0, leftOut: { weightScore, blanks } };
}

function blanksBehind(id: Criterion['id'], study: Study, runs: readonly CandidateRun[]) {
  const all = study.candidates.flatMap((candidate) => {
    const run = runs.find((one) => one.id === candidate.id);
    return run === undefined ? [] : [{ study, candidate, run }];
  });
  const serving = all.filter(canServe);
  return (serving.length > 0 ? serving : all).flatMap((judged) => {
    const field = blankBehind(id, judged);
    return field === null ? [] : [{ candidate: judged.candidate.id, field }];
  });
}

/** Whether it can do the job at all: what cannot is no choice, and its blanks must not decide between the others. */
const canServe = (judged: Judged): boolean =>
  passesAll(limitsOf({ ...judged, study: { ...judged.study, criteria: [] } })) !== false;
