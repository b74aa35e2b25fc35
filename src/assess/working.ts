import { prepareCandidate } from '../simulate/candidate.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Candidate, Study } from '../study/study.js';
import type { CalculationLine } from './assessment.js';
import { burdenWorking } from './working/burdens.js';
import { holdWorking } from './working/holding.js';
import type { Worked } from './working/line.js';
import { motorWorking } from './working/motor.js';
import { supplyWorking } from './working/supply.js';

/**
 * The working of one candidate, from data sheet to minutes: equation, numbers put in, result, source. Written so
 * that a reader with a pocket calculator can follow; every result stands as the run computed it.
 */
export function working(study: Study, candidate: Candidate, run: CandidateRun): CalculationLine[] {
  const worked: Worked = { study, candidate, run, prepared: prepareCandidate(study, candidate) };
  return [
    ...motorWorking(worked),
    ...holdWorking(worked),
    ...supplyWorking(worked),
    ...burdenWorking(worked),
  ];
}
