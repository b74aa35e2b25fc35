import type { Failure } from '../simulate/outcome.js';
import type { CriterionId } from '../study/choosing.js';
import type { LimitOutcome } from './assessment.js';

/** How each criterion is called, in tables and in sentences alike. */
export const criterionNames: Record<CriterionId, string> = {
  runtime: 'runtime',
  runtime_p10: 'runtime, low end',
  hold_power: 'power while holding',
  peak_current: 'peak current',
  body_mass: 'mass on the body',
  feature_mass: 'moving mass',
  cue_fidelity: 'cue fidelity',
  torque_margin: 'torque margin',
  winding_temperature: 'winding temperature',
  case_temperature: 'case temperature',
  noise: 'noise at 1 m',
  cost: 'cost',
  rework_hours: 'hours of work',
  swap_minutes: 'time to swap',
  fall_energy: 'energy of a fall',
  crush_force: 'crush force',
  push_force: 'push it withstands',
  fits: 'fit in its space',
  voltage: 'voltage',
};

/** Limits that come from what a drive cannot do at all. */
const failureNames: Record<Failure['code'], string> = {
  moves: 'moving',
  holds: 'holding the pose',
  linkage: 'reach of the linkage',
  positions: 'reaching every position',
  cord: 'tight cord',
  regulator: 'enough from the regulator',
};

const limitNames: Record<string, string> = { ...criterionNames, ...failureNames };

/** Name of a limit; one nobody knows is shown as it is written. */
export function limitName(criterion: LimitOutcome['criterion']): string {
  return Object.hasOwn(limitNames, criterion) ? limitNames[criterion]! : criterion.replaceAll('_', ' ');
}
