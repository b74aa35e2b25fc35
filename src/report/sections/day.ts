import type { DayPlan } from '../../assess/day/day-plan.js';
import { dayChart } from '../charts/day-chart.js';
import type { ReportContext } from '../context.js';
import { blocksTable, bringTable, dayCandidate, plansTable } from '../tables/day-tables.js';
import type { ChartContent, Filling, Values } from '../template/fill-template.js';
import { counted, duration, fixed, joined, withReading } from '../words/figures.js';
import { present } from './present.js';

/**
 * The event day with the candidate that is recommended, with the change that is, and what to bring; no section
 * without a day.
 */
export function daySection(context: ReportContext): Filling[] {
  const { day, study } = context.assessment;
  const plan = day?.changed ?? day?.plans.find((one) => one.candidate === day.candidate) ?? day?.plans[0];
  if (!plan) return [];
  const charts: Record<string, ChartContent | null> = { 'day-timeline': dayChart(context, plan) };
  const values: Values = {
    candidate: dayCandidate(context, plan),
    summary: plan.summary,
    pack: study.pack.label || study.pack.id,
    carried: carriedWords(context, plan),
    has_timeline: charts['day-timeline'] !== null,
    due: `${fixed(plan.dueSocFraction * 100, 0)}${joined}%`,
    due_before_end: plan.dueSocFraction > plan.endSocFraction,
    end: `${fixed(plan.endSocFraction * 100, 0)}${joined}%`,
    warning_to_end: plan.warningToEndS === null ? '' : withReading(plan.warningToEndS, 'minutes'),
    no_warning: plan.warningToEndS === null && plan.status !== 'cannot-play',
    packs_mass: plan.packsMassKg === null ? '' : withReading(plan.packsMassKg, context.units.mass),
    body_mass: plan.bodyMassKg === null ? '' : withReading(plan.bodyMassKg, context.units.mass),
    runtime_p10: plan.runtimeP10S === null ? '' : duration(plan.runtimeP10S),
    charge_left: chargeLeft(plan.packs.map(({ chargeLeftS }) => chargeLeftS)),
    blocks: { blocks: blocksTable(context, plan) },
    plans: { blocks: [plansTable(context)] },
    bring: { blocks: bringTable(plan) },
    aircraft: plan.aircraft.text,
  };
  return [{ values, charts: present(charts) }];
}

/** `one pack`; where several are connected side by side, that too. */
function carriedWords({ phrases }: ReportContext, plan: DayPlan): string {
  const { packsCarriedCount, packsConnectedCount } = plan;
  const packs = counted(packsCarriedCount * packsConnectedCount, 'pack');
  return packsConnectedCount === 1
    ? packs
    : phrases('packs-connected', { packs, connected: String(packsConnectedCount) });
}

/** Time on a charger after the day, all packs one after another. */
function chargeLeft(timesS: number[]): string {
  const sum = timesS.reduce((total, timeS) => total + timeS, 0);
  return sum < 30 ? '' : duration(sum);
}
