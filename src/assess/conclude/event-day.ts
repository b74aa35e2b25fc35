import { type Ensemble, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { NominalOutcome } from '../../simulate/outcome.js';
import type { Study } from '../../study/study.js';
import type { CandidateAssessment } from '../assessment.js';
import { type BreakEven, breakEven, eventNeeds } from '../break-even.js';
import { shareOf } from '../certainty/bands.js';
import type { DrawnStudy } from '../certainty/drawn-study.js';
import { tier } from '../choosing/drawn-worths.js';
import type { DayPlan } from '../day/day-plan.js';
import { drawnDay } from '../day/drawn-day.js';
import { planDay } from '../day/plan-day.js';

/**
 * The event day with every candidate, in rank order; empty without day.csv.
 * @param columnsOf draws of a candidate, one column per outcome; null where the draws say nothing
 */
export function daysOf(
  study: Study,
  ranked: readonly CandidateAssessment[],
  columnsOf: (id: string) => readonly Float64Array[] | null,
): DayPlan[] {
  return ranked.flatMap(({ id, nominal }) => dayWith(study, id, nominal, columnsOf(id)) ?? []);
}

function dayWith(
  study: Study,
  id: string,
  outcome: NominalOutcome,
  columns: readonly Float64Array[] | null = null,
): DayPlan | null {
  if (study.day.length === 0) return null;
  const candidate = study.candidates.find((one) => one.id === id)!;
  return planDay(study, candidate, outcome, columns && drawnDay(study, candidate, outcome, columns));
}

/** When the change from one drive to another has paid for itself, by the figures of both. */
export function breakEvenBetween(
  study: Study,
  before: { id: string; nominal: NominalOutcome },
  after: { id: string; nominal: NominalOutcome },
  days: readonly DayPlan[] | null = null,
): BreakEven {
  const dayOf = ({ id, nominal }: typeof before) =>
    days === null ? dayWith(study, id, nominal) : (days.find(({ candidate }) => candidate === id) ?? null);
  const { cost, reworkTimeS, runtimeS } = after.nominal;
  const runtimeGainS =
    before.nominal.runtimeS === null || runtimeS === null ? null : runtimeS - before.nominal.runtimeS;
  return breakEven(
    study,
    eventNeeds(study, before.nominal, dayOf(before)),
    eventNeeds(study, after.nominal, dayOf(after)),
    { costMoney: cost, workTimeS: reworkTimeS, runtimeGainS },
  );
}

/** Draws for which the day is planned anew. */
const plannedDraws = 256;

/**
 * Share of draws in which one drive comes before another and the change pays within so many events: the day planned
 * with the runtimes, warnings and currents of each draw.
 */
export function payProbability(
  study: Study,
  before: CandidateAssessment,
  after: CandidateAssessment,
  { candidateIds, outcomes, drawCount }: Ensemble,
  drawn: DrawnStudy,
  events: number,
): number {
  const [b, a] = [candidateIds.indexOf(before.id), candidateIds.indexOf(after.id)];
  const inDraw = (index: number, { id, nominal }: CandidateAssessment, draw: number) => {
    const at = (name: 'runtimeS' | 'warningS' | 'meanPackCurrentA') => {
      const value = outcomes[index]![outcomeIndex[name]]![draw]!;
      return Number.isNaN(value) ? null : value;
    };
    const [runtimeS, warningS] = [at('runtimeS'), at('warningS')];
    return { id, nominal: { ...nominal, runtimeS, warningS, meanPackCurrentA: at('meanPackCurrentA') } };
  };
  const placeOf = (index: number, draw: number) =>
    drawn.limits[index]!.tiers[draw] === tier.fails ? -1 : drawn.scores[index]![draw]!;
  return shareOf(Math.min(plannedDraws, drawCount), (draw) => {
    if (placeOf(a, draw) <= placeOf(b, draw)) return false;
    const { eventCount } = breakEvenBetween(study, inDraw(b, before, draw), inDraw(a, after, draw));
    return eventCount !== null && eventCount <= events;
  });
}
