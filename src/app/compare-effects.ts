import { assess } from '../assess/assess.js';
import { simulateCandidate } from '../simulate/candidate.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import { keyFigures, type RecordedCandidate } from './records-figures.js';
import type { Simulate } from './records-predicted.js';

/** What a study comes to: candidates in rank order, with the figures they are compared by. */
export interface Standing {
  leader: string | null;
  candidates: RecordedCandidate[];
}

/** How a candidate moved. Differences by the names of the key figures; null where one of the two has no figure. */
export interface CandidateMove {
  candidate: string;
  differences: Record<string, number | null>;
}

/** What one change does alone, on top of the earlier study. */
export interface ChangeEffect {
  change: StudyChange;
  moves: CandidateMove[];
  leader: string | null;
  /** Ids in rank order. */
  ranking: string[];
}

/** How the change between two studies comes about. */
export interface Explained {
  earlier: Standing;
  later: Standing;
  singles: ChangeEffect[];
  /** The later study against the earlier one. */
  together: CandidateMove[];
}

/**
 * Explains what the changes between two studies do to their results: each alone on top of the earlier study, and
 * all of them together. A candidate whose inputs a change leaves alone is not computed again.
 */
export function explainChanges(
  earlier: Study,
  later: Study,
  changes: readonly StudyChange[],
  progress: (step: string) => void,
  simulate: Simulate = simulateCandidate,
): Explained {
  const runs = runsOf(earlier, simulate);
  const before = standingOf(earlier, runs);
  const after = standingOf(later, runsOf(later, simulate));
  const singles = changes.map((change, index): ChangeEffect => {
    progress(`trying change ${index + 1} of ${changes.length}`);
    const changed = change.apply(earlier);
    const standing = standingOf(changed, movedRuns(changed, change, runs, simulate));
    return {
      change,
      moves: movesBetween(before, standing),
      leader: standing.leader,
      ranking: standing.candidates.map(({ id }) => id),
    };
  });
  return { earlier: before, later: after, singles, together: movesBetween(before, after) };
}

function runsOf(study: Study, simulate: Simulate): CandidateRun[] {
  return study.candidates.map((candidate) => simulate(study, candidate));
}

function movedRuns(
  study: Study,
  { candidate, movesRuns }: StudyChange,
  runs: readonly CandidateRun[],
  simulate: Simulate,
): CandidateRun[] {
  return study.candidates.map((entry) => {
    const known = runs.find(({ id }) => id === entry.id);
    const stays = known !== undefined && (!movesRuns || (candidate !== null && candidate !== entry.id));
    return stays ? known : simulate(study, entry);
  });
}

/** Judged on nominal figures, which is what single changes are told by. */
function standingOf(study: Study, runs: CandidateRun[]): Standing {
  const { leader, candidates } = assess(study, runs, { version: '', inputHash: '', inputs: [] });
  return {
    leader,
    candidates: candidates.map(({ id, label, rank, passes, score, nominal }) => ({
      id,
      label,
      rank,
      passes,
      score,
      nominal,
    })),
  };
}

function movesBetween(earlier: Standing, later: Standing): CandidateMove[] {
  return earlier.candidates.flatMap((before) => {
    const after = later.candidates.find(({ id }) => id === before.id);
    if (after === undefined) return [];
    const differences = keyFigures.map(({ name, read }): [string, number | null] => {
      const [old, next] = [read(before), read(after)];
      return [name, old === null || next === null ? null : next - old];
    });
    return [{ candidate: before.id, differences: Object.fromEntries(differences) }];
  });
}
