import type { CandidateAssessment } from '../assessment.js';
import type { SensitivityOutcome } from '../certainty.js';
import { normalisedWeights, tier } from '../choosing/drawn-worths.js';
import { smallestWeightChange } from '../choosing/weight-change.js';

/** The smallest change of the user's weights that changes who leads nominally; null when none does. */
export function leaderChangingWeights(
  ranked: readonly CandidateAssessment[],
): SensitivityOutcome['weightChange'] {
  const first = ranked[0];
  if (first === undefined || first.criteria.length === 0) return null;
  const worths = ranked.map(({ criteria }) => Float64Array.from(criteria, ({ worthScore }) => worthScore));
  const tiers = ranked.map(({ passes }) =>
    passes === true ? tier.passes : passes === null ? tier.notJudged : tier.fails,
  );
  const own = normalisedWeights(first.criteria.map(({ weightScore }) => weightScore));
  const change = smallestWeightChange(worths, tiers, 0, own);
  if (change === null) return null;
  return {
    leader: ranked[change.challengerIndex]!.id,
    weights: Object.fromEntries(
      first.criteria.map(({ criterion }, k) => [criterion, change.weightScores[k]!]),
    ),
    distance: change.changeScore,
  };
}
