import type { Candidate, Study } from '../../study/study.js';
import { changeKinds } from './kinds.js';
import {
  type ChangeLeftOut,
  type LesserChange,
  type LesserChanges,
  lesserChangeIds,
} from './lesser-change.js';
import { bestPairs, helps } from './pairs.js';
import type { Proposal, Setup } from './proposal.js';
import { type ChangeTools, startingPoint, tryOut } from './trial.js';
import { isCostLeftOut } from './unknown-price.js';

/** Every change that makes sense for a drive, worked out but not simulated, and those left out. */
function proposedChanges(setup: Setup): { proposals: Proposal[]; leftOut: ChangeLeftOut[] } {
  const proposals: Proposal[] = [];
  const leftOut: ChangeLeftOut[] = [];
  for (const id of lesserChangeIds) {
    const attempt = changeKinds[id].propose(setup);
    if ('proposal' in attempt) proposals.push(attempt.proposal);
    else leftOut.push({ id, reason: attempt.reason });
  }
  return { proposals, leftOut };
}

/**
 * What gets most of the gain without another drive: every lesser change on the drive of today, each solved in the
 * same model, as a ladder with the most useful first, and the best pair of the three best.
 *
 * Pure: the same study and tools give the same ladder. Costs one simulation for the drive as it is, one for each
 * change that alters the study, and at most three for pairs.
 * @param baseline the candidate that exists today
 * @param tools the simulation (a sketch will do, as long as it is the same for all) and the judgement
 */
export function lesserChanges(study: Study, baseline: Candidate, tools: ChangeTools): LesserChanges {
  const setup = { study, candidate: baseline };
  const start = startingPoint(setup, tools);
  const { proposals, leftOut } = proposedChanges(setup);
  const costLeftOut = isCostLeftOut(proposals);
  const tried = (all: Proposal[]) => inOrder(all.map((one) => tryOut(one, start, tools, costLeftOut)));
  const ladder = tried(proposals);
  const helpful = ladder.filter((change) => helps(change, start.standing.passes));
  const pairs = tried(bestPairs(helpful, setup));
  return {
    candidate: baseline.id,
    before: start.figures,
    passesBefore: start.standing.passes,
    ladder,
    bestPair: pairs[0] ?? null,
    leftOut,
  };
}

/** Scores closer than this do not tell two changes apart. */
const sameScore = 0.0005;

/** Passing first, then what could not be judged, then what fails; then score, runtime and playing time gained. */
function inOrder(changes: LesserChange[]): LesserChange[] {
  const place = ({ passes }: LesserChange) => (passes === true ? 0 : passes === null ? 1 : 2);
  const rounded = ({ gain }: LesserChange) => Math.round(gain.score / sameScore);
  const time = (timeS: number | null) => timeS ?? Number.NEGATIVE_INFINITY;
  return [...changes].sort(
    (a, b) =>
      place(a) - place(b) ||
      rounded(b) - rounded(a) ||
      difference(time(b.gain.runtimeS), time(a.gain.runtimeS)) ||
      difference(time(b.gain.playingTimeS), time(a.gain.playingTimeS)),
  );
}

/** Zero for two that are endless alike, which a subtraction is not. */
const difference = (a: number, b: number): number => (a === b ? 0 : a - b);
