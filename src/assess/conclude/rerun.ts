import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { DrawnFigures, Judged } from '../criterion-values.js';
import { limitsOf, passesAll } from '../limits.js';
import { compareForRank } from '../ranking.js';
import { criterionOutcomes, scoreOf } from '../scores.js';
import { withValueAt } from '../value-at-path.js';
import type { Rerun } from '../what-if/flips.js';

/** Computes two candidates of a study again with one number changed, and says which of them comes first. */
export function rerunOf(
  study: Study,
  simulate: (study: Study, candidate: Candidate) => CandidateRun,
  drawn: ReadonlyMap<string, DrawnFigures>,
): Rerun {
  return (path, value, pair) => {
    const changed = withValueAt(study, path, value);
    if (changed === null) return null;
    const standings = pair.map((id) => {
      const candidate = changed.candidates.find((entry) => entry.id === id)!;
      const figures = drawn.get(id);
      const judged: Judged = { study: changed, candidate, run: simulate(changed, candidate) };
      if (figures !== undefined) judged.drawn = figures;
      return { id, passes: passesAll(limitsOf(judged)), score: scoreOf(criterionOutcomes(judged)) };
    });
    return standings.sort(compareForRank)[0]!.id;
  };
}
