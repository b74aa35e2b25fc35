import type { Dimension } from '../quantity/dimension.js';
import { choice, type FieldDeclaration, quantity, required, text } from '../quantity/field.js';
import { type CriterionId, criterionIds, type Limit, type MeasuredQuantity } from './choosing.js';

const note = text('note', 'note', { meaning: 'anything worth keeping', how: 'free text' });

/** What the tool knows of a criterion before anybody weighs it. */
export interface CriterionFacts {
  /** null: the criterion is met or not (`fits`); 1 stands for met. */
  dimension: Dimension | null;
  /** Unit of a bare number; '' for pure numbers, null when a bare number is an error. */
  habitualUnit: string | null;
  /** What a bare limit means. */
  direction: Limit['direction'];
  meaning: string;
}

const facts = (
  dimension: Dimension | null,
  habitualUnit: string | null,
  direction: Limit['direction'],
  meaning: string,
): CriterionFacts => ({ dimension, habitualUnit, direction, meaning });

/** Every criterion with its dimension and the direction in which it is better. */
export const criterionFacts: Record<CriterionId, CriterionFacts> = {
  runtime: facts('time', 'min', 'at-least', 'runtime on one pack'),
  runtime_p10: facts('time', 'min', 'at-least', 'runtime on one pack that nine draws in ten exceed'),
  hold_power: facts('power', null, 'at-most', 'power of the drives while holding'),
  peak_current: facts('current', null, 'at-most', 'largest current from the pack'),
  body_mass: facts('mass', null, 'at-most', 'mass of drives, mounts, electronics and packs on the body'),
  feature_mass: facts('mass', null, 'at-most', 'moving mass with what rides on it'),
  cue_fidelity: facts(
    'ratio',
    '',
    'at-least',
    'how well moves keep their written times: 1 as written, 0.5 where they take twice as long',
  ),
  torque_margin: facts('ratio', '', 'at-least', 'effort the drive can give over the effort it needs'),
  winding_temperature: facts('temperature', null, 'at-most', 'highest winding temperature in the show'),
  case_temperature: facts('temperature', null, 'at-most', 'highest case temperature in the show'),
  noise: facts('sound-level', null, 'at-most', 'sound level while moving, at 1 m'),
  cost: facts('money', '', 'at-most', 'cost of the change'),
  rework_hours: facts('time', 'h', 'at-most', 'hours of work for the change'),
  swap_minutes: facts('time', 'min', 'at-most', 'minutes to exchange a broken drive'),
  fall_energy: facts('energy', null, 'at-most', 'energy of the fall after a power cut'),
  crush_force: facts('force', null, 'at-most', 'force on something caught near the hinge'),
  push_force: facts('force', null, 'at-least', 'push at the tip that a hold withstands'),
  fits: facts(null, null, 'at-least', 'whether it fits the free box'),
  voltage: facts(null, null, 'at-least', 'whether the full pack stays below the highest voltage'),
};

/** Columns of criteria.csv; the dimension of the worths and limits follows from the criterion. */
export const criterionFields: readonly FieldDeclaration[] = [
  required(
    choice('criterion', 'id', criterionIds, {
      meaning: 'what is judged',
      how: 'choose from the list',
    }),
  ),
  quantity('weight', 'weightScore', 'ratio', {
    meaning: 'how much it counts, compared with the others',
    how: 'decide it together, before seeing results',
    within: '0..1000000',
  }),
  text('worth_0_at', 'worthless', {
    meaning: 'value at which it is worth nothing',
    how: 'decide it: below (or above) what would you not even look?',
  }),
  text('worth_1_at', 'worthFull', {
    meaning: 'value from which more brings nothing',
    how: 'decide it: from where on would you stop caring?',
  }),
  text('must', 'must', {
    meaning: 'hard limit: at least 40 min, at most 2.5 kg, or yes',
    how: 'decide it: what rules a candidate out, however good the rest?',
  }),
  note,
];

/** Dimension of what can be measured on the baseline. */
export const measuredDimensions: Record<MeasuredQuantity, Dimension> = {
  runtime: 'time',
  hold_current: 'current',
  rest_current: 'current',
  move_time: 'time',
  loop_charge: 'charge',
  case_temperature: 'temperature',
};

/** Units of bare numbers in measured.csv, where there is a habit. */
export const measuredHabits: Partial<Record<MeasuredQuantity, string>> = { runtime: 'min' };

/** Columns of measured.csv; the dimension of the value follows from the quantity. */
export const measuredFields: readonly FieldDeclaration[] = [
  required(
    choice('quantity', 'quantity', Object.keys(measuredDimensions), {
      meaning: 'what was measured on the baseline',
      how: 'runtime: stopwatch from full pack to alarm; currents: multimeter in series; loop_charge: charger or meter that counts mAh',
    }),
  ),
  required(
    text('value', 'value', {
      meaning: 'reading, with its spread if known',
      how: 'as read; without a spread, 5 % is taken',
    }),
  ),
  text('unit', 'unit', { meaning: 'unit of a bare value', how: 'as on the instrument' }),
  note,
];
