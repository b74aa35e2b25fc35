import type { LimitOutcome } from '../../assess/assessment.js';
import type { CriterionId } from '../../study/choosing.js';
import type { ReportContext } from '../context.js';
import {
  type DisplayReadings,
  isDisplayed,
  joined,
  money,
  none,
  type ReadingName,
  withReading,
} from './figures.js';

interface CriterionWords {
  /** As it stands in a table or a sentence. */
  name: string;
  reading: ReadingName | keyof DisplayReadings | 'yes-no' | 'money';
}

/** How each criterion is called and in which unit it is read. */
export const criterionWords: Record<CriterionId, CriterionWords> = {
  runtime: { name: 'runtime', reading: 'minutes' },
  runtime_p10: { name: 'runtime, low end', reading: 'minutes' },
  hold_power: { name: 'power while holding', reading: 'watts' },
  peak_current: { name: 'peak current', reading: 'amperes' },
  body_mass: { name: 'mass on the body', reading: 'mass' },
  feature_mass: { name: 'moving mass', reading: 'mass' },
  cue_fidelity: { name: 'cue fidelity', reading: 'ratio' },
  torque_margin: { name: 'torque margin', reading: 'ratio' },
  winding_temperature: { name: 'winding temperature', reading: 'temperature' },
  case_temperature: { name: 'case temperature', reading: 'temperature' },
  noise: { name: 'noise', reading: 'decibels' },
  cost: { name: 'cost', reading: 'money' },
  rework_hours: { name: 'hours of work', reading: 'hours' },
  swap_minutes: { name: 'time to swap', reading: 'minutes' },
  fall_energy: { name: 'energy of a fall', reading: 'joules' },
  crush_force: { name: 'crush force', reading: 'force' },
  push_force: { name: 'push it withstands', reading: 'force' },
  fits: { name: 'fits its space', reading: 'yes-no' },
  voltage: { name: 'voltage', reading: 'volts' },
};

/** Limits that come from what a drive cannot do at all. */
const failureNames: Record<string, string> = {
  moves: 'moves as written',
  holds: 'holds the pose',
  linkage: 'linkage reaches',
  positions: 'reaches every position',
  cord: 'cord stays tight',
  regulator: 'regulator suffices',
};

/** Name of a limit; one nobody knows is shown as it is written. */
export function limitName(criterion: LimitOutcome['criterion']): string {
  if (Object.hasOwn(criterionWords, criterion)) return criterionWords[criterion as CriterionId].name;
  return failureNames[criterion] ?? criterion.replaceAll('_', ' ');
}

/** A value of a criterion with its unit; a dash when there is none, and when a limit has no figures. */
export function criterionFigure(
  criterion: LimitOutcome['criterion'],
  value: number | null,
  { currency, units }: Pick<ReportContext, 'currency' | 'units'>,
): string {
  if (!Object.hasOwn(criterionWords, criterion) || value === null) return none;
  const { reading } = criterionWords[criterion as CriterionId];
  if (reading === 'money') return money(value, currency);
  if (reading === 'yes-no') return value >= 1 ? 'yes' : 'no';
  return withReading(value, isDisplayed(reading) ? units[reading] : reading);
}

/** What a limit demands: `≥ 60 min`, `≤ 1.00 kg`, `yes`. */
export function limitDemand(limit: LimitOutcome, context: Pick<ReportContext, 'currency' | 'units'>): string {
  const figure = criterionFigure(limit.criterion, limit.limit, context);
  if (figure === none || figure === 'yes') return figure;
  return `${limit.direction === 'at-least' ? '≥' : '≤'}${joined}${figure}`;
}
