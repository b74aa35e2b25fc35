import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';

/** A cue that starts where the one before did not end. */
export function cueJumps(cue: string, at: string, wanted: string): Trouble {
  return errorOf(
    'cue-jumps',
    wanted,
    at,
    `the cue “${quoted(cue)}” is at ${wanted}, but the feature stands at ${at}`,
    'put a move before it, or leave “to” blank: hold and rest stay where the feature is',
  );
}

/** A loop that does not end where it begins. */
export function loopDoesNotClose(cue: string, end: string, begin: string): Trouble {
  return errorOf(
    'loop-does-not-close',
    end,
    begin,
    `after the last cue “${quoted(cue)}” the feature stands at ${end}, but the loop begins at ${begin}`,
    `end the loop with a move to ${begin}`,
  );
}

/** A rest where nothing bears the load. */
export function restInTheAir(cue: string, at: string, stops: string): Trouble {
  return errorOf(
    'rest-off-stop',
    at,
    stops,
    `the cue “${quoted(cue)}” rests at ${at}, where no stop or latch bears the load`,
    `rest at ${stops}, or use hold`,
  );
}

/** A move beyond a stop. */
export function beyondStop(cue: string, to: string, range: string): Trouble {
  return errorOf(
    'beyond-stop',
    to,
    range,
    `the cue “${quoted(cue)}” moves to ${to}, beyond the stops (${range})`,
    'check the sign, or the stops in study.csv',
  );
}

/** A move without a goal. */
export function moveWithoutGoal(cue: string): Trouble {
  return errorOf(
    'blank-required',
    '',
    'a position',
    `the move “${quoted(cue)}” says not where to`,
    'write the position into “to”',
  );
}

/** A move that goes nowhere. */
export function moveNowhere(cue: string, at: string): Trouble {
  return warningOf(
    'move-nowhere',
    at,
    'another position',
    `the move “${quoted(cue)}” goes to ${at}, where the feature stands already`,
    'use hold, or write another position',
  );
}

/** A cue without a duration. */
export function cueWithoutSeconds(cue: string): Trouble {
  return errorOf(
    'blank-required',
    '',
    'seconds',
    `the cue “${quoted(cue)}” says not how long it lasts`,
    'write its seconds',
  );
}

/** Two loop rows. */
export function secondLoop(firstLine: number): Trouble {
  return errorOf(
    'second-loop',
    'loop',
    'one loop row',
    `the loop begins in line ${firstLine} already`,
    'delete one of the loop rows',
  );
}

/** Nothing behind the loop row. */
export function emptyLoop(): Trouble {
  return errorOf(
    'empty-loop',
    'loop',
    'cues behind it',
    'there is no cue behind the loop row',
    'write the cues that repeat below it',
  );
}

/** Values in the loop row. */
export function loopRowWithValues(column: string, received: string): Trouble {
  return warningOf(
    'not-used',
    received,
    'a blank cell',
    `${column} is not used: a loop row only marks where the loop begins`,
    'empty the cell',
  );
}

/** A spread where cues are played as written. */
export function spreadNotUsed(column: string, received: string): Trouble {
  return warningOf(
    'spread-not-used',
    received,
    'a value without a spread',
    `the spread in “${quoted(received)}” is not used: cues are played as written`,
    `write ${column} without a spread`,
  );
}

/** Levels between nothing and one per cent: meant as the share `meant`, in per cent? */
export function lightsTooLow(received: string, shown: string, meant: string): Trouble {
  return warningOf(
    'implausible',
    received,
    'per cent, 0 to 100',
    `lights are written in per cent: “${quoted(received)}” is ${shown}`,
    `write ${meant} for ${meant} per cent`,
  );
}
