import { formatQuantity } from '../quantity/format.js';
import { type Criterion, type CriterionId, criterionIds, type Limit } from '../study/choosing.js';
import { criterionFacts } from '../study/choosing-fields.js';
import { defaultWeighted } from './criteria-assumptions.js';
import type { Assumptions } from './read-assumptions.js';

/** Ends of a worth scale in SI, and a note that states them. */
export interface Scale {
  worthless: number;
  worthFull: number;
  note: string;
}

/**
 * The scale of a criterion that states none. It is fixed, so that a candidate more or less never changes the score
 * of another; a runtime's follows the target.
 *
 * @returns null for criteria that are met or not
 */
export function scaleOf(
  id: CriterionId,
  targetRuntimeS: number | null,
  assumptions: Assumptions,
): Scale | null {
  const number = (item: string) => assumptions.find('criterion', id, item)?.value as number | undefined;
  const facts = criterionFacts[id];
  if (facts.dimension === null) return null;
  const isRuntime = id === 'runtime' || id === 'runtime_p10';
  const share = (item: string) => assumptions.of('criterion', 'runtime', item).value as number;
  const ends =
    isRuntime && targetRuntimeS !== null
      ? [
          share('worth_0_at_share_of_target') * targetRuntimeS,
          share('worth_1_at_share_of_target') * targetRuntimeS,
        ]
      : [number('worth_0_at')!, number('worth_1_at')!];
  const [worthless, worthFull] = ends as [number, number];
  const shown = (value: number) => formatQuantity(value, facts.dimension!);
  const why = isRuntime && targetRuntimeS !== null ? 'from the target runtime' : 'a fixed scale';
  return { worthless, worthFull, note: `worth 0 at ${shown(worthless)}, 1 at ${shown(worthFull)}: ${why}` };
}

/** The criteria when there is no criteria.csv: weights on what most makers care about, and four limits. */
export function defaultCriteria(targetRuntimeS: number | null, assumptions: Assumptions): Criterion[] {
  const weighted = criterionIds
    .filter((id) => defaultWeighted.includes(id))
    .map((id): Criterion => {
      const scale = scaleOf(id, targetRuntimeS, assumptions)!;
      const weightScore = assumptions.of('criterion', id, 'weight').value as number;
      const { worthless, worthFull, note } = scale;
      const must = id === 'cue_fidelity' ? leastOf(id, assumptions) : null;
      return { id, weightScore, worthless, worthFull, must, origin: 'assumed', note };
    });
  const { bound } = leastOf('torque_margin', assumptions);
  return [...weighted, limit('fits', 1), limit('voltage', 1), limit('torque_margin', bound)];
}

function leastOf(id: CriterionId, assumptions: Assumptions): Limit {
  return { direction: 'at-least', bound: assumptions.of('criterion', id, 'at_least').value as number };
}

function limit(id: CriterionId, bound: number): Criterion {
  const must = { direction: criterionFacts[id].direction, bound };
  const note = 'a limit of the default set';
  return { id, weightScore: 0, worthless: null, worthFull: null, must, origin: 'assumed', note };
}
