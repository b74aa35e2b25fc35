import { Sfc32 } from '../../simulate/sampling/sfc32.js';
import type { ViewWeights } from '../../study/choosing.js';
import type { Certainty, PairwiseProbability, PointOfView } from '../certainty.js';
import { acceptability } from '../choosing/acceptability.js';
import { standings } from '../choosing/own-weights.js';
import { isTie } from '../choosing/ties.js';
import { anyWeights, weightsInOrder } from '../choosing/weight-sampler.js';
import { type DrawnStudy, drawnStudy, type NominalJudgement } from './drawn-study.js';

/** Random weights tried on each draw. */
const weightsPerDrawCount = 2;

/** Who leads, beats and ties with whom, with the user's own weights. */
export const ownStandings = (drawn: DrawnStudy): Standings => standings(drawn.worths, drawn.ownWeights);

/** Ranks with random weights, and from which weights those are. */
export function randomStandings(drawn: DrawnStudy, seed: number) {
  const inOrder = drawn.criteria.some(({ origin }) => origin === 'given');
  const random = new Sfc32(seed, 'random weights');
  const weights = drawn.criteria.map(({ weightScore }) => weightScore);
  const sampler = inOrder ? weightsInOrder(random, weights) : anyWeights(random);
  const weightsDrawn: Certainty['weightsDrawn'] = inOrder ? 'in-order' : 'any';
  return { ranks: acceptability(drawn.worths, sampler, weightsPerDrawCount), weightsDrawn };
}

type Standings = ReturnType<typeof standings>;

/** Every ordered pair. */
export function pairwiseOf(candidateIds: readonly string[], own: Standings): PairwiseProbability[] {
  return candidateIds.flatMap((candidate, row) =>
    candidateIds.flatMap((against, column) =>
      row === column ? [] : [{ candidate, against, beatProbability: own[row]!.beatFractions[column]! }],
    ),
  );
}

/**
 * Pairs that beat each other about as often as not, of candidates that pass what could be judged.
 * @param inRank ids, best first
 */
export function tiesOf(
  inRank: readonly string[],
  candidateIds: readonly string[],
  own: Standings,
): [string, string][] {
  return inRank.flatMap((first, place) =>
    inRank.slice(place + 1).flatMap((second): [string, string][] => {
      const beats = own[candidateIds.indexOf(first)]!.beatFractions[candidateIds.indexOf(second)]!;
      return isTie(beats) ? [[first, second]] : [];
    }),
  );
}

/** The same draws with other people's weights; the limits stay as they are. */
export function pointsOfView(
  views: readonly ViewWeights[],
  nominal: readonly NominalJudgement[],
  ensemble: Parameters<typeof drawnStudy>[2],
): PointOfView[] {
  return views.map(({ id, label, criteria }) => {
    const drawn = drawnStudy(criteria, nominal, ensemble);
    const own = standings(drawn.worths, drawn.ownWeights);
    return {
      id,
      label,
      weights: Object.fromEntries(
        drawn.criteria.map((criterion, place) => [criterion.id, drawn.ownWeights[place]!]),
      ),
      leadProbabilities: ensemble.candidateIds.map((candidate, index) => ({
        candidate,
        probability: own[index]!.leadFraction,
      })),
    };
  });
}
