import type { Study } from '../../study/study.js';
import { inDraws } from '../certainty/sureness.js';
import { counted, minutes, percent } from '../figures.js';
import type { DayPlan, DaySwap } from './day-plan.js';
import { surelyDone } from './drawn-day.js';

type Told = Omit<DayPlan, 'summary' | 'bring'>;

/** How the day goes, in one to three plain sentences. */
export function summaryOf(study: Study, plan: Told): string {
  const tell: Record<DayPlan['status'], () => string> = {
    done: () => done(plan),
    'past-warning': () =>
      `${done(plan)} A pack is used beyond its warning: the alarm will sound before the swap.`,
    'more-packs': () => morePacks(plan),
    'stretch-too-long': () => stretchTooLong(study, plan),
    'cannot-play': () => 'The drive cannot play the cue list, so there is no day to plan.',
  };
  return [...inTheDraws(plan), tell[plan.status](), ...charging(plan), ...tightSwaps(plan)].join(' ');
}

/** How often the day is done, before the nominal plan that may promise too much. */
function inTheDraws(plan: Told): string[] {
  const { doneProbability, packsCarriedCount } = plan;
  if (doneProbability === null || plan.status === 'cannot-play') return [];
  const often = inDraws(doneProbability);
  const only = doneProbability < surelyDone ? 'only ' : '';
  return [
    `With ${counted(packsCarriedCount, packWord(plan))} the day is done in ${only}${often} of the draws. By the nominal figures:`,
  ];
}

function done(plan: Told): string {
  const { swaps, packsUsedCount } = plan;
  const left = `${percent(Math.min(...usedLeft(plan)))} is left in the emptiest ${packWord(plan)} at the end`;
  if (swaps.length === 0) return `One ${packWord(plan)} does the day; ${left}.`;
  return `${counted(packsUsedCount, packWord(plan))} ${packsUsedCount === 1 ? 'does' : 'do'} the day with ${counted(swaps.length, 'swap')}, ${places(swaps)}; ${left}.`;
}

/** What is swapped at once. */
const packWord = ({ packsConnectedCount }: Told): string =>
  packsConnectedCount === 1 ? 'pack' : packsConnectedCount === 2 ? 'pair' : 'set';

const usedLeft = ({ packs }: Told): number[] =>
  packs.filter(({ used }) => used).map(({ socEndFraction }) => socEndFraction);

const places = (swaps: DaySwap[]): string =>
  swaps.map(({ block, timeS }) => `in “${block}” after ${minutes(timeS)}`).join(', ');

function morePacks(plan: Told): string {
  const { packsCarriedCount, packsNeededCount } = plan;
  return `${counted(packsCarriedCount, packWord(plan))} ${packsCarriedCount === 1 ? 'is' : 'are'} not enough: ${firstDark(plan)}. It takes ${packsNeededCount}.`;
}

function stretchTooLong(study: Study, plan: Told): string {
  const swapping = study.day.filter(({ swapAllowed }) => swapAllowed).map(({ block }) => `“${block}”`);
  const where =
    swapping.length === 0 ? 'no block allows a swap' : `swaps are allowed only in ${swapping.join(', ')}`;
  return `No number of packs does the day, because ${where}: ${firstDark(plan)}.`;
}

function firstDark({ segments, darkS }: Told): string {
  const dark = segments.find(({ powered }) => !powered);
  if (dark === undefined) return `${minutes(darkS)} are without power`;
  return `in “${dark.block}” the power ends after ${minutes(dark.startS)} of the day, ${minutes(darkS)} too early in all`;
}

function charging({ charges }: Told): string[] {
  const blocks = [...new Set(charges.map(({ block }) => `“${block}”`))];
  return blocks.length === 0 ? [] : [`Packs are charged in ${blocks.join(', ')}.`];
}

function tightSwaps({ swaps, swapWorkTimeS, swapCount }: Told): string[] {
  const tight = swaps.filter(({ fitsBlock }) => fitsBlock === false);
  if (tight.length === 0 || swapWorkTimeS === null) return [];
  const each = minutes(swapWorkTimeS / swapCount);
  return [`A swap takes ${each}, longer than ${tight.map(({ block }) => `“${block}”`).join(', ')} lasts.`];
}
