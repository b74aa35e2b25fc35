import type { Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import {
  type JudgedStudy,
  type Judging,
  judgeChanged,
  judgeStudy,
  type Standing,
} from './compare-standing.js';
import { allKeyFigures } from './records-figures.js';

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
  verdict: Standing['verdict'];
  bandsGiven: boolean;
}

/** How the change between two studies comes about. */
export interface Explained {
  earlier: Standing;
  later: Standing;
  singles: ChangeEffect[];
  /** The later study against the earlier one. */
  together: CandidateMove[];
  /** What the single changes do not add up to: what they do only in company. */
  company: CandidateMove[];
}

/**
 * Explains what the changes between two studies do to their results as reports state them, medians after calibration
 * included: each alone on top of the earlier study, and all of them together. All draws are those of the reports, so
 * that no figure here differs from one there.
 */
export function explainChanges(
  earlier: Study,
  later: Study,
  changes: readonly StudyChange[],
  judging: Judging,
): Explained {
  const judged = judgeStudy(earlier, judging);
  const before = judged.standing;
  const after = judgeStudy(later, judging).standing;
  const singles = changes.map((change, index) => {
    judging.progress(`trying change ${index + 1} of ${changes.length}`);
    return effectOf(judged, change, judging);
  });
  const together = movesBetween(before, after);
  return { earlier: before, later: after, singles, together, company: companyOf(singles, together) };
}

function effectOf(judged: JudgedStudy, change: StudyChange, judging: Judging): ChangeEffect {
  const { standing } = judgeChanged(judged, change, judging);
  const { leader, verdict, bandsGiven, candidates } = standing;
  const ranking = candidates.map(({ id }) => id);
  return { change, moves: movesBetween(judged.standing, standing), leader, ranking, verdict, bandsGiven };
}

function movesBetween(earlier: Standing, later: Standing): CandidateMove[] {
  return earlier.candidates.flatMap((before) => {
    const after = later.candidates.find(({ id }) => id === before.id);
    if (after === undefined) return [];
    const differences = allKeyFigures.map(({ name, read }): [string, number | null] => {
      const [old, next] = [read(before), read(after)];
      return [name, old === null || next === null ? null : next - old];
    });
    return [{ candidate: before.id, differences: Object.fromEntries(differences) }];
  });
}

/** The move of all changes together less the sum of the single ones; null where one of them has no figure. */
function companyOf(singles: readonly ChangeEffect[], together: readonly CandidateMove[]): CandidateMove[] {
  return together.map(({ candidate, differences }) => {
    const alone = singles.map(({ moves }) => moves.find((move) => move.candidate === candidate)?.differences);
    const rests = Object.entries(differences).map(([figure, all]): [string, number | null] => {
      const parts = alone.map((move) => move?.[figure] ?? null);
      if (all === null || parts.some((part) => part === null)) return [figure, null];
      return [figure, all - parts.reduce<number>((sum, part) => sum + part!, 0)];
    });
    return { candidate, differences: Object.fromEntries(rests) };
  });
}
