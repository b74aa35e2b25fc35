import type { Assessment } from '../assess/assessment.js';
import { beginDraws, type Draws } from '../assess/certainty/draws.js';
import type { Verdict } from '../assess/certainty.js';
import { conclude } from '../assess/conclude.js';
import { alone, type Pending, type Threads } from '../assess/threads.js';
import { howToMeasure } from '../input/how-to-measure.js';
import { simulateCandidate } from '../simulate/candidate.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Candidate, Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import { type RecordedCandidate, recordedCandidates } from './records-figures.js';

/** What a study comes to, as its report states it. */
export interface Standing {
  /** First in rank on nominal figures, if it passes. */
  leader: string | null;
  verdict: Pick<Verdict, 'kind' | 'leader' | 'change' | 'sentence'>;
  draws: number;
  seed: number;
  /** Whether the draws carry bands: not where readings and study contradict each other. */
  bandsGiven: boolean;
  /** In rank order. */
  candidates: RecordedCandidate[];
}

/** Simulates one candidate of a study. */
export type Simulate = (study: Study, candidate: Candidate) => CandidateRun;

/** How studies are judged. */
export interface Judging {
  progress(step: string): void;
  threads?: Threads;
  /** Nominal runs; tests watch or shorten them. */
  simulate?: Simulate;
}

/** A study with all that was computed for it, of which a study that differs little can use again what holds. */
export interface JudgedStudy {
  study: Study;
  runs: readonly CandidateRun[];
  draws: Draws;
  standing: Standing;
}

/** Judges a study as its report does, with all of its draws. */
export function judgeStudy(study: Study, judging: Judging): JudgedStudy {
  const { threads = alone, simulate = simulateCandidate } = judging;
  const drawing = beginDraws(study, threads);
  const runs = study.candidates.map((candidate) => simulate(study, candidate));
  return concluded(study, runs, drawing, judging);
}

/** Judges a study in which one thing is changed; what the change does not reach is not computed again. */
export function judgeChanged(before: JudgedStudy, change: StudyChange, judging: Judging): JudgedStudy {
  const { threads = alone, simulate = simulateCandidate } = judging;
  const { reach, candidate: only } = change;
  const study = change.apply(before.study);
  const drawing = reach === 'worth' ? () => before.draws : beginDraws(study, threads);
  const runs = study.candidates.map((candidate) => {
    const known = before.runs.find(({ id }) => id === candidate.id);
    const stays = reach !== 'runs' || (only !== null && only !== candidate.id);
    return known !== undefined && stays ? known : simulate(study, candidate);
  });
  return concluded(study, runs, drawing, judging);
}

function concluded(
  study: Study,
  runs: CandidateRun[],
  drawing: Pending<Draws>,
  { threads }: Judging,
): JudgedStudy {
  const draws = drawing();
  const assessment = conclude(
    study,
    runs,
    () => draws,
    { version: '', inputHash: '', inputs: [] },
    {
      simulate: (changed, candidate) => simulateCandidate(changed, candidate, 'sketch'),
      howToMeasure,
      views: [],
      depth: 'ranking',
      progress() {},
      ...(threads && { threads }),
    },
  );
  return { study, runs, draws, standing: standingOf(assessment) };
}

function standingOf(assessment: Assessment): Standing {
  const { leader, verdict, draws, seed, certainty } = assessment;
  const { kind, leader: advised, change, sentence } = verdict;
  return {
    leader,
    verdict: { kind, leader: advised, change, sentence },
    draws,
    seed,
    bandsGiven: certainty?.calibration?.bandsGiven !== false,
    candidates: recordedCandidates(assessment),
  };
}
