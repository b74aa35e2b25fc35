import type { Caution } from '../assessment.js';
import { inDraws } from '../certainty/sureness.js';
import type { DayPlan } from '../day/day-plan.js';
import { surelyDone } from '../day/drawn-day.js';
import { counted, minutes } from '../figures.js';

/** From this share of draws on a day that is not promised is at least likely (as in the verdict, M25). */
const likelier = 0.5;

/** A caution where the packs that are carried do the day in too few draws. */
export function dayCautions({
  candidate,
  doneProbability,
  packsCarriedCount,
  packsSureCount,
  runtimeP10S,
}: DayPlan): Caution[] {
  if (doneProbability === null || doneProbability >= surelyDone) return [];
  const lasts =
    runtimeP10S === null ? '' : ` Nine draws in ten play for ${minutes(runtimeP10S)} or longer on one pack.`;
  return [
    {
      code: 'day-not-sure',
      severity: doneProbability < likelier ? 'caution' : 'note',
      candidate,
      figure: `done in ${inDraws(doneProbability)} of the draws`,
      text: `With ${counted(packsCarriedCount, 'pack')} carried the day is done in ${inDraws(doneProbability)} of the draws.${lasts}`,
      action:
        packsSureCount === null
          ? 'Allow a swap within the longest stretch, write more rest into it, or connect two packs side by side.'
          : `Carry ${counted(packsSureCount, 'pack')}.`,
    },
  ];
}
