import type { DayActivity, DayBlock } from '../../../src/study/show.js';

/** A block of the day, so many minutes long, without swap and charger unless said. */
export const block = (
  name: string,
  minutes: number,
  activity: DayActivity,
  more: Partial<DayBlock> = {},
): DayBlock => ({
  block: name,
  durationS: minutes * 60,
  activity,
  swapAllowed: false,
  charger: false,
  note: '',
  ...more,
});
