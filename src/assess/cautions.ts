import type { Study } from '../study/study.js';
import type { CandidateAssessment, Caution, CautionSeverity } from './assessment.js';
import { contactCautions } from './cautions/contact.js';
import { dayCautions } from './cautions/day.js';
import { effortCautions } from './cautions/effort.js';
import { fallingCautions } from './cautions/falling.js';
import { heatCautions } from './cautions/heat.js';
import { holdingCautions, measuredRuntime } from './cautions/holding.js';
import { packCautions } from './cautions/packs.js';
import { standingCautions } from './cautions/standing.js';
import { supplyCautions, wiringCautions } from './cautions/supply.js';
import type { Judged } from './criterion-values.js';
import type { DayPlan } from './day/day-plan.js';

const weight: Record<CautionSeverity, number> = { severe: 0, caution: 1, note: 2 };

/** What burns a drive or hurts somebody comes before what is missing or wears out. */
const gravest = ['voltage', 'falls', 'too-weak', 'crush', 'hot-case', 'winding-hot', 'wire', 'pack-current'];

const gravity = ({ code }: Caution): number => {
  const place = gravest.indexOf(code);
  return place < 0 ? gravest.length : place;
};

/**
 * Every caution the numbers raise, most severe first, then what does most harm, then those of better ranked
 * candidates; then the cautions that always stand, ending with the line that codes and licensed practice come first.
 * @param ranked candidates in rank order
 * @param days the event day with each of them, once it is planned
 */
export function cautionsOf(
  study: Study,
  judged: Judged[],
  ranked: Pick<CandidateAssessment, 'id'>[],
  days: readonly DayPlan[] = [],
): Caution[] {
  const place = (caution: Caution) => ranked.findIndex((candidate) => candidate.id === caution.candidate);
  const raised = [
    ...judged.slice(0, 1).flatMap(wiringCautions),
    ...packCautions(study),
    ...judged.flatMap(candidateCautions),
    ...days.flatMap(dayCautions),
  ];
  raised.sort(
    (a, b) => weight[a.severity] - weight[b.severity] || gravity(a) - gravity(b) || place(a) - place(b),
  );
  return [...raised, ...standingCautions(study)];
}

function candidateCautions(judged: Judged): Caution[] {
  return [
    ...fallingCautions(judged),
    ...effortCautions(judged),
    ...contactCautions(judged),
    ...holdingCautions(judged),
    ...heatCautions(judged),
    ...supplyCautions(judged),
    ...measuredRuntime(judged),
  ];
}
