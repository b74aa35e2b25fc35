import type { DayActivity } from '../../study/show.js';

/**
 * How the day goes with the packs that are carried: `done`; `past-warning`, done but a pack is used beyond its
 * warning; `more-packs`, done only with more packs than are carried; `stretch-too-long`, not done by any number of
 * packs because a stretch without a swap is longer than one pack lasts; `cannot-play`, the drive cannot play the show.
 */
export type DayStatus = 'done' | 'past-warning' | 'more-packs' | 'stretch-too-long' | 'cannot-play';

/** What one block of the day takes. */
export interface DayBlockUse {
  block: string;
  activity: DayActivity;
  startS: number;
  endS: number;
  swapAllowed: boolean;
  charger: boolean;
  meanCurrentA: number;
  chargeC: number;
}

/** A stretch of the day on one pack, for the timeline. */
export interface DaySegment {
  block: string;
  activity: DayActivity;
  startS: number;
  endS: number;
  /** From 0. */
  packIndex: number;
  socStartFraction: number;
  socEndFraction: number;
  /** False where the block wants power and the pack has none left. */
  powered: boolean;
}

/** One swap of packs. */
export interface DaySwap {
  block: string;
  /** Of the block in day.csv, from 0. */
  blockIndex: number;
  timeS: number;
  outPackIndex: number;
  inPackIndex: number;
  outSocFraction: number;
  inSocFraction: number;
  /** Whether the block is long enough for it; null when the time of a swap is not known. */
  fitsBlock: boolean | null;
}

/** A pack on the charger. */
export interface DayCharge {
  block: string;
  packIndex: number;
  startS: number;
  endS: number;
  socStartFraction: number;
  socEndFraction: number;
}

/** Where one pack stands at the end of the day. */
export interface DayPack {
  packIndex: number;
  used: boolean;
  socEndFraction: number;
  /** When it was full again on the charger; null when it never was. */
  fullAgainS: number | null;
  /** On a charger from the end of the day, to full. */
  chargeLeftS: number;
}

/** The energy of one pack against the lines that passenger aircraft draw. */
export interface AircraftLine {
  energyJ: number;
  /** `free` without approval; `approval` of the airline; `forbidden`; `other`: not a lithium battery. */
  category: 'free' | 'approval' | 'forbidden' | 'other';
  text: string;
}

/** One thing to bring, and why. */
export interface BringItem {
  item: string;
  count: number;
  reason: string;
}

/** The event day with one candidate: packs, swaps, charging and what to bring. JSON-friendly, SI. */
export interface DayPlan {
  candidate: string;
  status: DayStatus;
  /** In one or two plain sentences. */
  summary: string;
  /** Packs that are connected side by side and used as one; a count of packs below is one of such sets. */
  packsConnectedCount: number;
  packsCarriedCount: number;
  /** Fewest packs that do the day; null when no number does. */
  packsNeededCount: number | null;
  /** Fewest with which none is used beyond its warning; null when no number does it. */
  packsBeforeWarningCount: number | null;
  /** Share of draws in which the packs that are carried do the day; null without draws. */
  doneProbability: number | null;
  /** Fewest packs that do the day in nine draws in ten; null when no number does, or without draws. */
  packsSureCount: number | null;
  packsUsedCount: number;
  swapCount: number;
  /** All swaps together; null when the time of a swap is not known. */
  swapWorkTimeS: number | null;
  /** Runtime that nine draws in ten reach; null without draws. The rest of the plan is from nominal figures. */
  runtimeP10S: number | null;
  /** Time without power in blocks that want it. */
  darkS: number;
  /** Powered and resting: drives, loads that are always drawn, idle converters. */
  restCurrentA: number;
  /** State of charge at which a pack is due for a swap, and at which it ends. */
  dueSocFraction: number;
  endSocFraction: number;
  /** Between warning and end in the show; null when the end comes without a warning. */
  warningToEndS: number | null;
  blocks: DayBlockUse[];
  segments: DaySegment[];
  swaps: DaySwap[];
  charges: DayCharge[];
  packs: DayPack[];
  aircraft: AircraftLine;
  /** Packs carried, and drive with them as it is on the body; null when a mass is blank. */
  packsMassKg: number | null;
  bodyMassKg: number | null;
  /** The same with as many packs as the day needs. */
  neededBodyMassKg: number | null;
  /** The same with as many as do it in nine draws in ten. */
  sureBodyMassKg: number | null;
  bring: BringItem[];
}
