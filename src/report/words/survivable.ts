import type { CandidateAssessment } from '../../assess/assessment.js';
import { destroyedCaseK } from '../../assess/thresholds.js';
import type { ReportContext } from '../context.js';
import type { DisplayReading } from './figures.js';

/** Temperatures of a drive as far as it lives: past that they read `>100`, for nobody will ever see the figure. */
export interface HeatReadings {
  winding: DisplayReading;
  case: DisplayReading;
  windingEndK: number;
}

/** How the temperatures of one candidate read: the winding up to its limit, the case up to what no drive survives. */
export function heatReadings(
  { assessment, units }: ReportContext,
  { id }: Pick<CandidateAssessment, 'id'>,
): HeatReadings {
  const sheet = assessment.study.candidates.find((one) => one.id === id)?.sheet;
  const windingEndK = sheet?.windingLimitK ?? Number.POSITIVE_INFINITY;
  return {
    winding: upTo(units.temperature, windingEndK),
    case: upTo(units.temperature, destroyedCaseK),
    windingEndK,
  };
}

function upTo(reading: DisplayReading, endK: number): DisplayReading {
  const past = `>${reading.show(endK)}`;
  const show: DisplayReading['show'] = (value) =>
    typeof value === 'number' && value > endK ? past : reading.show(value);
  return { ...reading, show, endless: past };
}
