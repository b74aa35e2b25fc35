import type { Ensemble } from '../../simulate/ensemble/ensemble.js';
import type { Criterion } from '../../study/choosing.js';
import type { LimitOutcome } from '../assessment.js';
import type { Choice } from '../choosing/rank-again.js';
import { passesAll } from '../choosing/rank-order.js';
import { criterionOutcomes } from '../scores.js';
import { drawnLimits } from './drawn-limits.js';
import { drawnStudy, type NominalJudgement } from './drawn-study.js';

/** Limits that hold whatever anybody wants: the pack must not burn the drive, and the drive must go in. */
const alwaysCount = ['voltage', 'fits'];

/**
 * Gathers what a ranking is made from: every criterion that has a weight or a scale and that no blank keeps out, and every limit that the criteria
 * set and that is not a matter of what can be built at all.
 * @param nominal one per candidate of the draws, in their order
 * @param isSure whether the draws say anything
 */
export function choiceOf(
  criteria: readonly Criterion[],
  nominal: readonly NominalJudgement[],
  ensemble: Pick<Ensemble, 'candidateIds' | 'drawCount' | 'outcomes'>,
  isSure: boolean,
): Choice {
  const weighed = criteria.filter(
    ({ weightScore, worthless, worthFull, leftOut }) =>
      leftOut === undefined && (weightScore > 0 || (worthless !== null && worthFull !== null)),
  );
  // With one weight for all, no criterion is left out for having none.
  const counted = weighed.map((criterion) => ({ ...criterion, weightScore: 1 }));
  const limits = criteria
    .filter(({ id, must }) => must !== null && !alwaysCount.includes(id))
    .map(({ id }) => id);
  const isDropped = ({ criterion }: LimitOutcome) => limits.some((id) => id === criterion);
  const { worths } = drawnStudy(counted, nominal, ensemble).worths;
  return {
    criteria: weighed.map(({ id, weightScore }) => ({ id, weightScore })),
    limits,
    drawCount: isSure ? ensemble.drawCount : 0,
    candidates: nominal.map(({ judged, limits: own }, index) => {
      const drawn = { judged, columns: ensemble.outcomes[index]! };
      const fixed = own.filter((limit) => !isDropped(limit));
      const each = limits.map((id) => own.filter(({ criterion }) => criterion === id));
      return {
        id: judged.candidate.id,
        worthScores: criterionOutcomes({ ...judged, study: { ...judged.study, criteria: counted } }).map(
          ({ worthScore }) => worthScore,
        ),
        passes: passesAll(fixed),
        limitPasses: each.map(passesAll),
        drawnWorthScores: worths[index]!,
        tiers: drawnLimits(fixed, drawn).tiers,
        limitTiers: each.map((limit) => drawnLimits(limit, drawn).tiers),
      };
    }),
  };
}
