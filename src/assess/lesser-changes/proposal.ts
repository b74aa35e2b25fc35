import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { ChangeBurden, ChangeSetting, LesserChangeId } from './lesser-change.js';

/** A study with the drive it is about. */
export interface Setup {
  study: Study;
  candidate: Candidate;
}

/** A setup that was simulated. */
export interface Tried extends Setup {
  run: CandidateRun;
}

/** A change worked out for one setup, before it is simulated. */
export interface Proposal {
  /** The changes it consists of. */
  parts: LesserChangeId[];
  title: string;
  actions: string[];
  settings: ChangeSetting[];
  burden: ChangeBurden;
  /** The changed study and drive; the very objects it was given when the drive runs no differently. */
  setup: Setup;
  /** What comes onto the body beside what the changed study counts itself. */
  addedBodyMassKg: number;
  /** Packs, or pairs of packs in parallel, that are carried to be used one after another. */
  packsInTurnCount: number;
  /** Puts right what the simulation of the changed study cannot know of the study before. */
  corrected(run: CandidateRun): CandidateRun;
  sideEffects(before: Tried, after: Tried): string[];
}

/** What came of trying to work a change out. */
export type Attempt = { proposal: Proposal } | { reason: string };

/** One kind of lesser change. */
export interface ChangeKind {
  id: LesserChangeId;
  /** Changes of one family stand in for each other and are never combined. */
  family: string;
  propose(setup: Setup): Attempt;
}

/** A proposal with the parts that most changes share filled in. */
export function proposal(
  parts: Pick<Proposal, 'parts' | 'title' | 'actions' | 'burden' | 'setup'> & Partial<Proposal>,
): Attempt {
  return {
    proposal: {
      settings: [],
      addedBodyMassKg: parts.burden.massKg,
      packsInTurnCount: parts.setup.study.packsCarriedCount,
      corrected: (run) => run,
      sideEffects: () => [],
      ...parts,
    },
  };
}
