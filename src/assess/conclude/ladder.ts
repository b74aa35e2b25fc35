import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { Assessment } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import type { LesserChanges } from '../lesser-changes/lesser-change.js';
import { lesserChanges } from '../lesser-changes/lesser-changes.js';
import { standingOf } from '../lesser-changes/trial.js';

/**
 * The lesser changes to the drive of today. Where a runtime that nine draws in ten exceed is asked for, each change
 * keeps its distance from the nominal runtime.
 */
export function ladderOf(
  study: Study,
  { candidate, run, drawn }: Judged,
  simulate: (study: Study, candidate: Candidate) => CandidateRun,
): LesserChanges {
  const nominalS = run.nominal.runtimeS;
  const share = drawn === undefined || !nominalS ? 0 : drawn.runtimeP10S / nominalS;
  const judge = (changed: Judged) => {
    if (drawn === undefined) return standingOf(changed);
    const runtimeP10S = share * (changed.run.nominal.runtimeS ?? 0);
    return standingOf({ ...changed, drawn: { ...drawn, runtimeP10S } });
  };
  return lesserChanges(study, candidate, { simulate, judge });
}

/** Where the ladder starts. */
export function startOf({
  candidate,
  before,
  passesBefore,
  leftOut,
}: LesserChanges): Assessment['lesserChangesFrom'] {
  return { candidate, before, passesBefore, leftOut };
}
