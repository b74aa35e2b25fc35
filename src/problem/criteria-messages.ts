import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';

/** One end of a worth scale without the other. */
export function worthIncomplete(criterion: string, missing: string): Trouble {
  return errorOf(
    'worth-incomplete',
    '',
    missing,
    `${criterion} has one end of its scale; ${missing} is blank`,
    'give both worth_0_at and worth_1_at, or neither',
  );
}

/** Both ends of a worth scale the same. */
export function worthFlat(criterion: string, received: string): Trouble {
  return errorOf(
    'worth-flat',
    received,
    'two different values',
    `${criterion} is worth nothing and everything at the same value`,
    'give two different values',
  );
}

/** A scale on a criterion that is met or not. */
export function scaleNotUsed(criterion: string, column: string, received: string): Trouble {
  return warningOf(
    'not-used',
    received,
    'a blank cell',
    `${column} is not used: ${criterion} is met or not met`,
    'empty the cell',
  );
}

/** A bare limit: which way it was taken. */
export function limitTaken(criterion: string, received: string, meaning: string): Trouble {
  return warningOf(
    'limit-direction-taken',
    received,
    meaning,
    `the limit “${quoted(received)}” of ${criterion} is taken as “${meaning}”`,
    `write ${meaning}`,
  );
}

/** A limit against the criterion's better side. */
export function limitAgainstDirection(criterion: string, received: string, usual: string): Trouble {
  return warningOf(
    'limit-against-direction',
    received,
    usual,
    `“${quoted(received)}” limits ${criterion} on its better side`,
    `is “${usual}” meant?`,
  );
}

/** A scale that makes the worse end of a criterion worth everything. */
export function worthAgainstDirection(criterion: string, received: string, better: string): Trouble {
  return warningOf(
    'worth-against-direction',
    received,
    better,
    `worth_1_at of ${criterion} lies on its worse side: ${better} is usually better`,
    'are worth_0_at and worth_1_at exchanged? If it is meant so, nothing needs to be done',
  );
}

/** A limit on a yes-or-no criterion that is neither. */
export function limitNotYes(criterion: string, received: string): Trouble {
  return errorOf(
    'unknown-choice',
    received,
    'yes, or a blank cell',
    `${criterion} is met or not met: “${quoted(received)}” is no limit for it`,
    'write yes',
  );
}

/** A criterion that neither counts nor limits. */
export function countsForNothing(criterion: string): Trouble {
  return warningOf(
    'counts-for-nothing',
    '',
    'a weight or a limit',
    `${criterion} has neither a weight nor a limit`,
    'give it one, or delete the row',
  );
}

/** No weight anywhere. */
export function noWeight(): Trouble {
  return errorOf(
    'no-weight',
    '',
    'a weight above 0 on at least one criterion',
    'no criterion has a weight above 0, so nothing can be ranked',
    'give the criteria weights',
  );
}

/** A word for a weight that is none of the few there are. */
export function unknownImportance(received: string, words: readonly string[]): Trouble {
  const expected = `a number or one of ${words.join(', ')}`;
  return errorOf(
    'unknown-importance',
    received,
    expected,
    `“${quoted(received)}” is no weight`,
    `write ${expected}`,
  );
}

/** The same criterion twice. */
export function criterionTwice(criterion: string, firstLine: number): Trouble {
  return errorOf(
    'duplicate-id',
    criterion,
    'every criterion once',
    `${criterion} was set in line ${firstLine} already`,
    'delete one of the rows',
  );
}

/** No value behind the words of a limit. */
export function limitNotRead(received: string): Trouble {
  return errorOf(
    'limit-not-read',
    received,
    'a limit such as at least 40 min, or at most 2.5 kg',
    `“${quoted(received)}” is not a limit`,
    'write at least or at most, then the value with its unit',
  );
}

/** A limit to drop that nobody set. */
export function noLimitToDrop(criterion: string): Trouble {
  return warningOf(
    'no-limit-to-drop',
    '',
    'a limit that is set',
    `${criterion} has no limit to drop, so nothing changes`,
    'leave the change out, or write the limit that you want to try',
  );
}

/** A limit to drop that holds whatever anybody wants. */
export function limitAlwaysHolds(criterion: string): Trouble {
  return warningOf(
    'limit-always-holds',
    '',
    'a limit that can be dropped',
    `${criterion} always counts as a limit, so nothing changes`,
    'leave the change out',
  );
}
