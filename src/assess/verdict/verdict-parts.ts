import type { Study } from '../../study/study.js';
import type { CandidateAssessment } from '../assessment.js';
import type { BreakEven } from '../break-even.js';
import type { Certainty, RatedChange, SensitivityOutcome } from '../certainty.js';
import type { Measurable } from '../what-if/measure-first.js';
import type { StandingIfHeld } from './open-limits.js';

/** Everything the verdict weighs. Bands are given: where none are, there is no verdict from draws. */
export interface VerdictParts {
  study: Study;
  /** In rank order. */
  ranked: readonly CandidateAssessment[];
  certainty: Certainty;
  /** Candidate that the verdict is about: see `leaderOf`. */
  leader: CandidateAssessment;
  baseline: CandidateAssessment | null;
  changes: readonly RatedChange[];
  /** Of the change to the leader; null when the leader is the drive of today or there is none. */
  breakEven: BreakEven | null;
  /** Share of draws in which that change is better and pays within the events allowed; worked out when asked. */
  payProbability(): number;
  /** Worth most first. */
  measurables: readonly Measurable[];
  /** Whom the leader is compared with; null when it is alone: see `contestOf`. */
  against: string | null;
  /** By id, as if every limit held that cannot be judged; null where all are judged: see `standingsIfHeld`. */
  ifHeld: Readonly<Record<string, StandingIfHeld>> | null;
  /** Null where only the ranking was asked for. */
  sensitivity: SensitivityOutcome | null;
}

/** A candidate that a limit rules out in more draws than this does not lead. (M25) */
export const leastPass = 0.5;

/**
 * Who leads in the draws: of the candidates that pass in half of the draws or more, else of those that pass on their
 * figures, the one that leads in most draws with the user's own weights; equal ones, as far as so many draws can tell,
 * in rank order. Where none passes, the first that is not judged, else the one that passes in most.
 */
export function leaderOf(
  ranked: readonly CandidateAssessment[],
  { candidates, draws }: Pick<Certainty, 'candidates' | 'draws'>,
): CandidateAssessment {
  const likely = ranked.filter(({ id }) => (candidates[id]!.passProbability ?? 0) >= leastPass);
  const passing = likely.length > 0 ? likely : ranked.filter(({ passes }) => passes === true);
  if (passing.length > 0) {
    return mostOf(passing, (id) => candidates[id]!.leadProbability ?? 0, noiseOf(draws));
  }
  const open = ranked.filter(({ passes }) => passes === null);
  return open[0] ?? nearestToPassing(ranked, { candidates });
}

/** The candidate that passes in most draws; of equal ones that with the fewest broken limits, then by rank. */
export function nearestToPassing(
  ranked: readonly CandidateAssessment[],
  { candidates }: Pick<Certainty, 'candidates'>,
): CandidateAssessment {
  const broken = ({ limits }: CandidateAssessment) => limits.filter(({ passes }) => passes === false).length;
  const fewest = [...ranked].sort((a, b) => broken(a) - broken(b));
  return mostOf(fewest, (id) => candidates[id]!.passProbability ?? 0);
}

/** The first with the largest figure, where only what exceeds the noise is larger. */
const mostOf = (
  of: readonly CandidateAssessment[],
  figure: (id: string) => number,
  noise: (share: number) => number = () => 1e-9,
) =>
  of.reduce((best, candidate) => {
    const largest = figure(best.id);
    return figure(candidate.id) > largest + noise(largest) ? candidate : best;
  });

/** Twice the standard error of the difference of two shares of so many draws that exclude each other. */
const noiseOf = (draws: number) => (share: number) =>
  Math.max(1e-9, 2 * Math.sqrt((2 * share * (1 - share)) / draws));

/**
 * The leader and whom it is compared with: the drive of today, or, where that leads itself or a limit rules it out,
 * the one that leads in most of the other draws, better ranked of equal ones. Who is ruled out is no contest.
 * @returns ids; the leader's alone when nobody stands beside it
 */
export function contestOf(
  ranked: readonly CandidateAssessment[],
  { candidates }: Pick<Certainty, 'candidates'>,
  leader: CandidateAssessment,
  baseline: CandidateAssessment | null,
): string[] {
  const others = ranked.filter((one) => one !== leader);
  if (others.length === 0) return [leader.id];
  const isRuledOut = ({ id, passes }: CandidateAssessment) =>
    passes === false && (candidates[id]!.passProbability ?? 0) < leastPass;
  const stands = baseline !== null && baseline !== leader && !isRuledOut(baseline);
  const rivals = others.filter((one) => !isRuledOut(one));
  if (stands) return [leader.id, baseline.id];
  // Where all others are ruled out, the drive of today is what the leader takes the place of.
  if (rivals.length === 0) return [leader.id, (others.find((one) => one === baseline) ?? others[0]!).id];
  return [leader.id, mostOf(rivals, (id) => candidates[id]!.leadProbability ?? 0).id];
}

/** Who is tied with the leader, the one that leads in most draws first. */
export function tiedWithLeader({
  ranked,
  leader,
  certainty,
}: Pick<VerdictParts, 'ranked' | 'leader' | 'certainty'>): CandidateAssessment[] {
  const leads = ({ id }: CandidateAssessment) => certainty.candidates[id]!.leadProbability ?? 0;
  return ranked
    .filter(({ id }) =>
      certainty.ties.some((pair) => id !== leader.id && pair.includes(id) && pair.includes(leader.id)),
    )
    .sort((a, b) => leads(b) - leads(a));
}

/** P(a beats b) with the user's own weights. */
export function beatProbability({ pairwise }: Certainty, a: string, b: string): number {
  const pair = pairwise.find(({ candidate, against }) => candidate === a && against === b);
  return pair?.beatProbability ?? 0.5;
}
