import type { MeasurementAdvice } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';

/** What to measure first, with whom it belongs to unless the label names it already; null when nothing tells. */
export function nextMeasurement(context: ReportContext): (MeasurementAdvice & { owner: string }) | null {
  const [advice] = context.assessment.nextMeasurements;
  if (!advice) return null;
  return { ...advice, owner: ownerWords(context, advice.candidate, advice.label) };
}

/** Label of the candidate that a figure belongs to; empty when it is nobody's or the text names it already. */
export function ownerWords(context: ReportContext, owner: string | null, text: string): string {
  const candidate = context.candidates.find(({ id }) => id === owner);
  return candidate === undefined || text.includes(candidate.label) ? '' : candidate.label;
}
