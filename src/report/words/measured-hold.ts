import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';

/** A measured hold current of all drives, on the pack's side. */
export interface MeasuredHold {
  currentA: number;
  /** Given with the candidate it takes the place of the model; read on the drive of today it weights the draws. */
  use: 'replaces' | 'weights';
}

/** The hold current that somebody measured on a candidate; null when nobody did. */
export function measuredHold(
  { assessment }: Pick<ReportContext, 'assessment'>,
  { nominal, isBaseline }: Pick<CandidateAssessment, 'nominal' | 'isBaseline'>,
): MeasuredHold | null {
  if (nominal.holdCurrentUsed === 'measured') {
    return { currentA: nominal.holdPackCurrentA, use: 'replaces' };
  }
  const reading = assessment.study.measured.find(({ quantity }) => quantity === 'hold_current');
  return isBaseline && reading ? { currentA: reading.value, use: 'weights' } : null;
}
