import type { Assessment } from '../assess/assessment.js';
import { beginDraws, type Draws } from '../assess/certainty/draws.js';
import type { Verdict } from '../assess/certainty.js';
import { conclude } from '../assess/conclude.js';
import type { Threads } from '../assess/threads.js';
import { howToMeasure } from '../input/how-to-measure.js';
import { type Listing, nominalRun, simulateCandidate } from '../simulate/candidate.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Candidate, Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import { type RecordedCandidate, recordedCandidates } from './records-figures.js';

/** What a study comes to, as its report states it. */
export interface Standing {
  /** First in rank, if it passes. */
  leader: string | null;
  verdict: Pick<Verdict, 'kind' | 'leader' | 'change' | 'sentence'>;
  draws: number;
  seed: number;
  /** Whether the draws carry bands: not where readings and study contradict each other. */
  bandsGiven: boolean;
  /** In rank order. */
  candidates: RecordedCandidate[];
}

/** Simulates one candidate: with the figures of the study as read, or with what is believed of them. */
export type Simulate = (study: Study, candidate: Candidate, listing?: Listing) => CandidateRun;

/** How studies are judged. */
export interface Judging {
  progress(step: string): void;
  threads?: Threads;
  /** Runs of single figures; tests watch or shorten them. */
  simulate?: Simulate;
}

/** A study with all that was computed for it, of which a study that differs little can use again what holds. */
export interface JudgedStudy {
  study: Study;
  /** The same, or what its readings leave of it. */
  believed: Study;
  runs: readonly CandidateRun[];
  draws: Draws;
  standing: Standing;
}

/** Judges a study as its report does, with all of its draws. */
export function judgeStudy(study: Study, judging: Judging): JudgedStudy {
  const { believed, finish } = beginDraws(study, judging.threads);
  const runs = study.candidates.map((candidate) => nominalRun(study, believed, candidate, judging.simulate));
  return concluded({ study, believed, runs, draws: finish() }, judging);
}

/** Judges a study in which one thing is changed; what the change does not reach is not computed again. */
export function judgeChanged(before: JudgedStudy, change: StudyChange, judging: Judging): JudgedStudy {
  const { reach, candidate: only } = change;
  const study = change.apply(before.study);
  if (reach === 'worth') {
    const believed = before.believed === before.study ? study : change.apply(before.believed);
    return concluded({ ...before, study, believed }, judging);
  }
  const { believed, finish } = beginDraws(study, judging.threads);
  // What is believed of a candidate follows from the readings and from every figure it shares with the others.
  const isAsRead = believed === study && before.believed === before.study;
  const runs = study.candidates.map((candidate) => {
    const known = before.runs.find(({ id }) => id === candidate.id);
    const stays = isAsRead && (reach !== 'runs' || (only !== null && only !== candidate.id));
    return known !== undefined && stays ? known : nominalRun(study, believed, candidate, judging.simulate);
  });
  return concluded({ study, believed, runs, draws: finish() }, judging);
}

function concluded(parts: Omit<JudgedStudy, 'standing'>, { threads }: Judging): JudgedStudy {
  const assessment = conclude(
    parts.believed,
    [...parts.runs],
    () => parts.draws,
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
  return { ...parts, standing: standingOf(assessment) };
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
