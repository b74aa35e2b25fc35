import { type CriterionId, criterionIds } from '../study/choosing.js';
import { criterionFacts } from '../study/choosing-fields.js';
import { type AssumptionRow, row } from './assumption-row.js';

const scaleBasis = 'a fixed scale that does not depend on the candidates; state your own in criteria.csv';

/** Worth 0 and worth 1 of each criterion that has a scale, in the value grammar. */
const scales: Partial<Record<CriterionId, readonly [worthless: string, worthFull: string]>> = {
  runtime: ['0 min', '120 min'],
  runtime_p10: ['0 min', '120 min'],
  hold_power: ['10 W', '0 W'],
  peak_current: ['15 A', '0 A'],
  body_mass: ['3 kg', '0 kg'],
  feature_mass: ['5 kg', '0 kg'],
  cue_fidelity: ['0.5', '1'],
  torque_margin: ['1', '3'],
  winding_temperature: ['120 °C', '40 °C'],
  case_temperature: ['70 °C', '25 °C'],
  noise: ['70 dB', '35 dB'],
  cost: ['300', '0'],
  rework_hours: ['40 h', '0 h'],
  swap_minutes: ['30 min', '0 min'],
  fall_energy: ['5 J', '0 J'],
  crush_force: ['200 N', '0 N'],
  push_force: ['0 N', '50 N'],
};

/** Weights when there is no criteria.csv. */
const weights: Partial<Record<CriterionId, string>> = {
  runtime: '4',
  body_mass: '2',
  cue_fidelity: '2',
  rework_hours: '2',
  cost: '1',
  fall_energy: '1',
};

/** Limits when there is no criteria.csv. A cue five times too slow is another cue, however long the pack lasts. */
const leastRatios = { cue_fidelity: '0.2', torque_margin: '1.3' } as const satisfies Partial<
  Record<CriterionId, string>
>;

/** Rows about choosing. */
export function criteriaAssumptions(): AssumptionRow[] {
  const ofCriterion = (id: CriterionId): AssumptionRow[] => {
    const scale = scales[id];
    const dimension = criterionFacts[id].dimension ?? 'ratio';
    const weight = weights[id];
    return [
      ...(weight === undefined
        ? []
        : [row('criterion', id, 'weight', 'ratio', weight, 'when there is no criteria.csv')]),
      ...(scale === undefined
        ? []
        : [
            row('criterion', id, 'worth_0_at', dimension, scale[0], scaleBasis),
            row('criterion', id, 'worth_1_at', dimension, scale[1], scaleBasis),
          ]),
    ];
  };
  return [
    ...criterionIds.flatMap(ofCriterion),
    row(
      'criterion',
      'runtime',
      'worth_0_at_share_of_target',
      'ratio',
      '0.5',
      'when a target runtime is given',
    ),
    row(
      'criterion',
      'runtime',
      'worth_1_at_share_of_target',
      'ratio',
      '1.5',
      'when a target runtime is given',
    ),
    ...Object.entries(leastRatios).map(([id, least]) =>
      row('criterion', id, 'at_least', 'ratio', least, 'when there is no criteria.csv'),
    ),
  ];
}

/** Criteria with a weight or a limit in the default set, in order. */
export const defaultWeighted = Object.keys(weights) as CriterionId[];
