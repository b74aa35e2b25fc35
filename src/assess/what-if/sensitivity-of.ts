import type { Ensemble } from '../../simulate/ensemble/ensemble.js';
import type { Study } from '../../study/study.js';
import type { CandidateAssessment } from '../assessment.js';
import type { NominalJudgement } from '../certainty/drawn-study.js';
import type { SensitivityOutcome } from '../certainty.js';
import { totalEffects } from './effects.js';
import { inputFlips, type Rerun } from './flips.js';
import { inputRange } from './input-range.js';
import { inputSwings } from './swung.js';
import { leaderChangingWeights } from './weight-change.js';
import { WhatIf } from './what-if.js';

/** What the sensitivity is made from. */
export interface SensitivityParts {
  study: Study;
  /** In rank order. */
  ranked: readonly CandidateAssessment[];
  /** The first in rank, and whom it is compared with if anybody: see `contestOf`. */
  pairIds: readonly string[];
  nominal: readonly NominalJudgement[];
  ensemble: Ensemble;
  /** Whether the draws agree with measurements, and are no longer those of the study's own spreads. */
  measured: boolean;
  /** Share of draws in which each candidate passes, by id; null where it cannot be judged. */
  passProbabilities: Readonly<Record<string, number | null>>;
  rerun: Rerun;
}

/** What would change the order, without what measurements are worth. */
export type OrderChanges = Omit<SensitivityOutcome, 'measureFirst'>;

/** What would change the order: inputs, groups of inputs, weights. (M24) */
export function sensitivityOf(parts: SensitivityParts): OrderChanges | null {
  const { study, ranked, pairIds, nominal, ensemble, measured, passProbabilities, rerun } = parts;
  const [leader, against] = pairIds;
  if (leader === undefined || against === undefined) return null;
  const named = (id: string) => study.candidates.find((candidate) => candidate.id === id)!;
  // Who passes in no draw comes first at no value that an input takes in the draws.
  const ids = study.candidates
    .map(({ id }) => id)
    .filter((id) => pairIds.includes(id) || passProbabilities[id] !== 0);
  const all = new WhatIf(study, ids.map(named), nominal);
  const pair = new WhatIf(study, pairIds.map(named), nominal);
  const ranges = ensemble.inputs.flatMap((input) => {
    const known = all.inputs[all.indexOf(input.path)];
    return known === undefined ? [] : (inputRange(study, input, known.nominal) ?? []);
  });
  return {
    leader,
    against,
    swings: inputSwings(ranges, pair),
    flips: inputFlips(ranges, all, ids, leader, rerun),
    totalEffects: totalEffects(study, pair, pairIds, measured ? ensemble : null),
    weightChange: leaderChangingWeights(ranked),
  };
}
