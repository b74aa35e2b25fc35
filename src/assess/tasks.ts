import { simulateCandidate } from '../simulate/candidate.js';
import type { RunDescription } from '../simulate/ensemble/run-ensemble.js';
import { EnsembleRun } from '../simulate/ensemble/run-ensemble.js';
import type { Candidate, Study } from '../study/study.js';
import type { CandidateAssessment } from './assessment.js';
import { type RatingParts, ratedChanges } from './certainty/rated-changes.js';
import type { RatedChange, RunDownBand } from './certainty.js';
import { runDownBands } from './conclude/drawings.js';
import { ladderOf } from './conclude/ladder.js';
import { rerunOf } from './conclude/rerun.js';
import type { DrawnFigures, Judged } from './criterion-values.js';
import type { LesserChanges } from './lesser-changes/lesser-change.js';
import { replaces } from './verdict/decide.js';
import { type OrderChanges, type SensitivityParts, sensitivityOf } from './what-if/sensitivity-of.js';

/** The two things that only a report shows. */
export interface Further {
  orderChanges: OrderChanges | null;
  runDownBands: RunDownBand[];
}

/** What the two things that only a report shows are made from. */
export interface FurtherParts extends Omit<SensitivityParts, 'rerun'> {
  figures: ReadonlyMap<string, DrawnFigures>;
  /** Candidates whose run on one pack is shown with its band. */
  shownIds: readonly string[];
  /** The run behind the draws. */
  run: RunDescription;
}

/** What the lesser changes are found and rated from. */
export interface LesserChangesParts {
  study: Study;
  /** The drive of today. */
  baseline: Judged;
  /** null where the draws are not asked. */
  rating: RatingParts | null;
  /** For a ranking: no change that takes more work than the first that replaces this candidate is looked at. */
  replaced: CandidateAssessment | null;
}

/** The lesser changes, as they were found and as the draws rate them. */
export interface FoundChanges {
  found: LesserChanges;
  rated: RatedChange[];
}

const sketch = (study: Study, candidate: Candidate) => simulateCandidate(study, candidate, 'sketch');

/** Parts of the judgement that need nothing of each other, so that each may run in a thread of its own. */
export const tasks = {
  /** The lesser changes to the drive of today, from its nominal figures and its draws. */
  lesserChanges: ({ study, baseline, rating, replaced }: LesserChangesParts): FoundChanges => {
    const found = ladderOf(study, baseline, sketch);
    const enough = replaced && ((change: RatedChange) => replaces(change, replaced));
    return { found, rated: ratedChanges(found, rating, enough) };
  },

  /** What would change the order, and the run of one pack with its band. */
  further: (parts: FurtherParts): Further => ({
    orderChanges: sensitivityOf({
      ...parts,
      rerun: rerunOf(parts.study, simulateCandidate, parts.figures),
    }),
    runDownBands: runDownBands(
      parts.shownIds,
      parts.ensemble,
      EnsembleRun.from(parts.run),
      simulateCandidate,
    ),
  }),
};

/** By the name under which a thread is asked for them. */
export type Tasks = typeof tasks;
