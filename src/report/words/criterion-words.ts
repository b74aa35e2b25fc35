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

type Reading = ReadingName | keyof DisplayReadings | 'yes-no' | 'money';

/** In which unit each criterion is read. */
const criterionReadings: Record<CriterionId, Reading> = {
  runtime: 'minutes',
  runtime_p10: 'minutes',
  hold_power: 'watts',
  peak_current: 'amperes',
  body_mass: 'mass',
  feature_mass: 'mass',
  cue_fidelity: 'ratio',
  torque_margin: 'ratio',
  winding_temperature: 'temperature',
  case_temperature: 'temperature',
  noise: 'decibels',
  cost: 'money',
  rework_hours: 'hours',
  swap_minutes: 'minutes',
  fall_energy: 'joules',
  crush_force: 'force',
  push_force: 'force',
  fits: 'yes-no',
  voltage: 'volts',
};

/** A value of a criterion with its unit; a dash when there is none, and when a limit has no figures. */
export function criterionFigure(
  criterion: LimitOutcome['criterion'],
  value: number | null,
  { currency, units }: Pick<ReportContext, 'currency' | 'units'>,
): string {
  if (!Object.hasOwn(criterionReadings, criterion) || value === null) return none;
  const reading = criterionReadings[criterion as CriterionId];
  if (reading === 'money') return money(value, currency);
  if (reading === 'yes-no') return value >= 1 ? 'yes' : 'no';
  return withReading(value, isDisplayed(reading) ? units[reading] : reading);
}

/** What a limit demands: `≥ 60 min`, `≤ 1.00 kg`, `yes`. */
export function limitDemand(
  limit: Pick<LimitOutcome, 'criterion' | 'limit' | 'direction'>,
  context: Pick<ReportContext, 'currency' | 'units'>,
): string {
  // That its voltage suits is met or not: the volts that are borne differ from drive to drive.
  if (limit.criterion === 'voltage' && limit.limit === 1) return 'yes';
  const figure = criterionFigure(limit.criterion, limit.limit, context);
  if (figure === none || figure === 'yes') return figure;
  return `${limit.direction === 'at-least' ? '≥' : '≤'}${joined}${figure}`;
}
