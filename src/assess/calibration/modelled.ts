import type { outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { MeasuredQuantity } from '../../study/choosing.js';
import type { Candidate, Study } from '../../study/study.js';
import { stillCurrentA } from '../day/rest-current.js';

/** One draw of the drive of today: its outcomes, and the study with the numbers of the draw in place. */
export interface ModelledDraw {
  outcome(name: keyof typeof outcomeIndex): number;
  study: Study;
  candidate: Candidate;
}

/** What the model says for each reading of measured.csv, SI; NaN where it does not occur. */
export const modelled: Record<MeasuredQuantity, (draw: ModelledDraw) => number> = {
  runtime: ({ outcome }) => outcome('runtimeS'),
  hold_current: ({ outcome }) => outcome('holdPackCurrentA'),
  rest_current: ({ study, candidate }) => stillCurrentA(study, candidate),
  move_time: ({ outcome, study }) => outcome('loopS') - stillTimeS(study),
  loop_charge: ({ outcome }) => outcome('meanPackCurrentA') * outcome('loopS'),
  case_temperature: ({ outcome }) => outcome('caseTemperatureK'),
};

/** Time of one loop in which nothing moves. */
const stillTimeS = ({ show }: Study): number =>
  show.loop.reduce((sum, { action, durationS }) => sum + (action === 'move' ? 0 : durationS), 0);

/** How far off the model itself may be, as a share of the reading, one standard deviation (from experience, M21). */
const modelErrors: Record<MeasuredQuantity, number> = {
  runtime: 0.1,
  hold_current: 0.15,
  rest_current: 0.1,
  move_time: 0.1,
  loop_charge: 0.1,
  case_temperature: 0.1,
};

/** The same for the runtime on a pack that is known by its label only. */
const labelOnlyError = 0.25;

/** How far off the model may be for one reading; for a temperature, as a share of its rise above the air. */
export function modelErrorRatio({ pack }: Study, quantity: MeasuredQuantity): number {
  return quantity === 'runtime' && pack.cellResistanceOhm === null ? labelOnlyError : modelErrors[quantity];
}
