import type { NominalOutcome } from '../simulate/outcome.js';
import type { Study } from '../study/study.js';
import type { DayPlan } from './day/day-plan.js';
import { counted, plain } from './figures.js';

/** One assumption of the value model, as the report prints it. */
export interface ValueAssumption {
  value: number;
  unit: string;
  basis: string;
}

/**
 * What a saved pack, swap or minute is worth. Everything that is assumed stands here and nowhere else.
 *
 * value of an event = packs saved × (price ÷ charges + handling × hour price) + swap time saved × hour price
 * + time without power avoided × hour price. Packs that need not be bought come off the investment, once.
 */
export const valueModel = {
  chargesPerPack: {
    value: 150,
    unit: 'charges',
    basis: 'a pack is worn out after so many; each event uses one of each pack (from experience)',
  },
  handlingPerPack: {
    value: 600,
    unit: 's',
    basis: 'charging, checking and storing one pack for one event (from experience)',
  },
  swapIfUnknown: {
    value: 600,
    unit: 's',
    basis: 'a swap whose minutes are not given (from experience)',
  },
} as const satisfies Record<string, ValueAssumption>;

/** What one event needs. */
export interface EventNeeds {
  packCount: number;
  swapCount: number;
  /** All swaps together. */
  swapWorkTimeS: number;
  /** Time that the show should play and has no power. */
  darkS: number;
}

/**
 * What an event needs with one drive: by the day where there is one; else packs for the target runtime, swapped
 * one after the other; else one pack. A day that no number of packs does is counted with those carried.
 * @param joinedCount packs that are used as one, side by side: a pair counts as two packs and one swap
 */
export function eventNeeds(
  study: Study,
  outcome: NominalOutcome,
  day: DayPlan | null,
  joinedCount = 1,
): EventNeeds {
  const swapS = outcome.swapTimeS ?? valueModel.swapIfUnknown.value;
  if (day === null) {
    const { runtimeS } = outcome;
    const targetS = study.targetRuntimeS;
    const packCount =
      targetS === null || runtimeS === null ? 1 : Math.max(1, Math.ceil(targetS / runtimeS - 1e-9));
    const swapCount = packCount - 1;
    return { packCount: joinedCount * packCount, swapCount, swapWorkTimeS: swapCount * swapS, darkS: 0 };
  }
  // With the packs it lacks the day would not go dark, and would be swapped to each of them.
  const lacking = day.status === 'more-packs' && day.packsNeededCount !== null;
  const packCount = day.packsNeededCount ?? day.packsCarriedCount;
  const swapCount = lacking ? Math.max(day.swapCount, packCount - 1) : day.swapCount;
  const darkS = lacking ? 0 : day.darkS;
  return { packCount: joinedCount * packCount, swapCount, swapWorkTimeS: swapCount * swapS, darkS };
}

/** Whether anything says how long a show has to last: without, one pack does for every drive and none saves any. */
export const canValueEvents = ({ day, targetRuntimeS }: Study): boolean =>
  day.length > 0 || targetRuntimeS !== null;

/** What a change takes, once. null = not known. */
export interface ChangeEffort {
  costMoney: number | null;
  workTimeS: number | null;
  /** Runtime gained on one pack. */
  runtimeGainS: number | null;
}

/** When a change has paid for itself. */
export interface BreakEven {
  /** Money and work at the hour price, less the packs that need not be bought; null when either is not known. */
  investmentMoney: number | null;
  valuePerEventMoney: number;
  /** What makes up the value of an event. */
  parts: { label: string; valueMoney: number }[];
  /** Events until it has paid for itself, 0 when it does so at once; null = never, or not known. */
  eventCount: number | null;
  /** The same in years at the study's number of events; null likewise. */
  yearCount: number | null;
  /** Runtime gained for the work put in, both in seconds; null when either is not known or no work is. */
  runtimePerWorkRatio: number | null;
  /** For a chart: balance after so many events, from 0. Empty when the investment is not known. */
  series: { eventCounts: number[]; balancesMoney: number[] };
  sentence: string;
}

/**
 * Break-even of a change against the drive of today. (M25)
 * @param before what an event needs today
 * @param after what it needs with the change
 */
export function breakEven(
  study: Study,
  before: EventNeeds,
  after: EventNeeds,
  effort: ChangeEffort,
): BreakEven {
  const parts = valueParts(study, before, after);
  const valuePerEventMoney = parts.reduce((sum, { valueMoney }) => sum + valueMoney, 0);
  const investmentMoney = investmentOf(study, before, after, effort);
  const eventCount = eventsUntilPaid(investmentMoney, valuePerEventMoney);
  const { workTimeS, runtimeGainS } = effort;
  const result = {
    investmentMoney,
    valuePerEventMoney,
    parts,
    eventCount,
    yearCount:
      eventCount === null || study.eventsPerYearCount === 0 ? null : eventCount / study.eventsPerYearCount,
    runtimePerWorkRatio:
      workTimeS === null || workTimeS <= 0 || runtimeGainS === null ? null : runtimeGainS / workTimeS,
    series: seriesOf(study, investmentMoney, valuePerEventMoney, eventCount),
  };
  return { ...result, sentence: sentenceOf(study, result) };
}

const hourlyMoney = (study: Study, timeS: number): number => (timeS / 3600) * study.hourPriceMoney;

function valueParts(study: Study, before: EventNeeds, after: EventNeeds): BreakEven['parts'] {
  const packs = before.packCount - after.packCount;
  const wearMoney = (study.pack.priceMoney ?? 0) / valueModel.chargesPerPack.value;
  const handlingS = valueModel.handlingPerPack.value;
  return [
    { label: 'wear of packs', valueMoney: packs * wearMoney },
    { label: 'handling of packs', valueMoney: hourlyMoney(study, packs * handlingS) },
    { label: 'swaps', valueMoney: hourlyMoney(study, before.swapWorkTimeS - after.swapWorkTimeS) },
    { label: 'minutes without power', valueMoney: hourlyMoney(study, before.darkS - after.darkS) },
  ];
}

/** Packs beyond those that are carried today have to be bought. */
function investmentOf(
  study: Study,
  before: EventNeeds,
  after: EventNeeds,
  effort: ChangeEffort,
): number | null {
  const { costMoney, workTimeS } = effort;
  if (costMoney === null || workTimeS === null) return null;
  const bought = ({ packCount }: EventNeeds) => Math.max(0, packCount - study.packsCarriedCount);
  const packsMoney = (bought(before) - bought(after)) * (study.pack.priceMoney ?? 0);
  return costMoney + hourlyMoney(study, workTimeS) - packsMoney;
}

function eventsUntilPaid(investmentMoney: number | null, valueMoney: number): number | null {
  if (investmentMoney === null) return null;
  if (investmentMoney <= 0) return 0;
  return valueMoney > 0 ? Math.ceil(investmentMoney / valueMoney - 1e-9) : null;
}

/** The chart shows some years, and half as far again as the break-even where that is in sight. */
const shownYears = 5;
const fewestShown = 10;
const mostShown = 200;
const points = 50;

function seriesOf(
  study: Study,
  investmentMoney: number | null,
  valueMoney: number,
  eventCount: number | null,
): BreakEven['series'] {
  const series: BreakEven['series'] = { eventCounts: [], balancesMoney: [] };
  if (investmentMoney === null) return series;
  const wanted = Math.max(
    fewestShown,
    shownYears * study.eventsPerYearCount,
    Math.ceil(1.5 * (eventCount ?? 0)),
  );
  const last = Math.min(mostShown, Math.ceil(wanted));
  const step = Math.ceil(last / points);
  for (let events = 0; events <= last; events += step) {
    series.eventCounts.push(events);
    series.balancesMoney.push(events * valueMoney - investmentMoney);
  }
  return series;
}

function sentenceOf(study: Study, told: Omit<BreakEven, 'sentence'>): string {
  const money = (amount: number) => `${plain(amount)} ${study.about.currency}`.trim();
  const { investmentMoney, valuePerEventMoney, eventCount, yearCount } = told;
  if (investmentMoney === null) return 'Whether it pays is not known: its cost or its hours are not given.';
  if (!canValueEvents(study)) {
    return 'Whether it pays is not known: without a target runtime or a day no packs, swaps and minutes can be counted.';
  }
  if (eventCount === 0) return 'It pays at once: it takes nothing beyond the packs that need not be bought.';
  if (eventCount === null)
    return `It takes ${money(investmentMoney)} and never pays for itself in packs, swaps and minutes.`;
  const years = yearCount === null ? '' : `, ${plain(yearCount)} years`;
  return `It takes ${money(investmentMoney)} and saves ${money(valuePerEventMoney)} at each event: paid for after ${counted(eventCount, 'event')}${years}.`;
}
