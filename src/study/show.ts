import type { MotionLaw } from '../physics/motion-law.js';

/** What the feature does during a cue. */
export type CueAction = 'move' | 'hold' | 'rest';

/** One line of the cue list, complete: it knows where it starts and ends and its light level. */
export interface Cue {
  name: string;
  action: CueAction;
  /** Position at the start; rad or m. */
  fromPosition: number;
  /** Position at the end; equal to the start for hold and rest. */
  toPosition: number;
  durationS: number;
  law: MotionLaw;
  /** Light level, 0…1. */
  lightsFraction: number;
  note: string;
  /** Line in show.csv. */
  line: number;
}

/** The cue list: cues played once, then the loop that repeats. */
export interface Show {
  leadIn: Cue[];
  loop: Cue[];
}

/** What it does during a block of the event day. */
export type DayActivity = 'show' | 'still' | 'off';

/** One block of the event day. */
export interface DayBlock {
  block: string;
  durationS: number;
  activity: DayActivity;
  swapAllowed: boolean;
  charger: boolean;
  note: string;
}
