import type { CandidateAssessment } from '../assessment.js';
import type { DrawnStudy } from '../certainty/drawn-study.js';
import { tier } from '../choosing/drawn-worths.js';
import { standings } from '../choosing/own-weights.js';
import { isTie } from '../choosing/ties.js';
import { limitName } from '../criterion-words.js';
import { listed } from '../figures.js';
import { fieldWords } from './labels.js';
import { beatProbability, type VerdictParts } from './verdict-parts.js';

/** How one candidate would stand if every limit held that a blank keeps from being judged. */
export interface StandingIfHeld {
  /** Share of draws in which it would lead. */
  leadProbability: number;
  /** Share of draws in which it would beat each candidate, by id. */
  beatProbabilities: Readonly<Record<string, number>>;
}

/**
 * The standings as if every limit held that cannot be judged. Somebody who is not judged ranks after all that pass, so
 * a blank cell alone can make another one lead for sure; this is what the blank may hide.
 * @returns by id; null where everything is judged
 */
export function standingsIfHeld(drawn: DrawnStudy): Record<string, StandingIfHeld> | null {
  const { tiers } = drawn.worths;
  if (!tiers.some((own) => own.includes(tier.notJudged))) return null;
  const held = tiers.map((own) => own.map((one) => (one === tier.notJudged ? tier.passes : one)));
  const found = standings({ ...drawn.worths, tiers: held }, drawn.ownWeights);
  const byId = (figures: Float64Array) =>
    Object.fromEntries(drawn.candidateIds.map((id, index) => [id, figures[index]!]));
  return Object.fromEntries(
    drawn.candidateIds.map((id, index) => {
      const { leadFraction, beatFractions } = found[index]!;
      return [id, { leadProbability: leadFraction, beatProbabilities: byId(beatFractions) }];
    }),
  );
}

/** A candidate that a blank keeps from being judged and that would lead in so many draws if its limits held. */
export interface OpenContender {
  candidate: CandidateAssessment;
  leadProbability: number;
  /** Share of draws in which it would beat the leader. */
  beatProbability: number;
}

/** Who may lead behind a blank, the likeliest first; the leader itself is none. */
export function openContenders({ ranked, leader, ifHeld }: VerdictParts): OpenContender[] {
  if (ifHeld === null) return [];
  return ranked
    .filter((candidate) => candidate.passes === null && candidate !== leader)
    .map((candidate) => {
      const { leadProbability, beatProbabilities } = ifHeld[candidate.id]!;
      return { candidate, leadProbability, beatProbability: beatProbabilities[leader.id]! };
    })
    .sort((a, b) => b.leadProbability - a.leadProbability);
}

/** The one that would be the leader if its limits held, too clearly to call it a tie; null where there is none. */
export function hiddenLeader(parts: VerdictParts): OpenContender | null {
  const led = parts.ifHeld?.[parts.leader.id]?.leadProbability ?? 1;
  return (
    openContenders(parts).find(
      ({ leadProbability, beatProbability }) =>
        leadProbability > led && beatProbability > 0.5 && !isTie(beatProbability),
    ) ?? null
  );
}

/**
 * Share of draws in which the leader beats the drive of today. That one is in use: where a blank keeps it from being
 * judged its limit counts as held here, or an empty cell would speak for a redesign.
 */
export function beatsToday({ certainty, leader, baseline, ifHeld }: VerdictParts): number {
  if (baseline === null) return 1;
  return baseline.passes === null && ifHeld !== null
    ? ifHeld[leader.id]!.beatProbabilities[baseline.id]!
    : beatProbability(certainty, leader.id, baseline.id);
}

/** The limits of a candidate that wait for a figure: `noise and fit in its space`. */
export const openLimits = ({ limits }: CandidateAssessment): string =>
  listed(limits.filter(({ passes }) => passes === null).map(({ criterion }) => limitName(criterion)));

/** A field as sentences name it; what no single cell holds is told in words already. */
const inWords = (missing: string) => (/^[a-z_]+$/.test(missing) ? fieldWords(missing) : missing);

/** The blanks that those limits wait for, as sentences name them: `noise and length`. */
export const blankFields = ({ limits }: CandidateAssessment): string =>
  listed([
    ...new Set(
      limits.flatMap(({ passes, missing, criterion }) =>
        passes === null ? (missing ?? criterion).split(', ').map(inWords) : [],
      ),
    ),
  ]);
