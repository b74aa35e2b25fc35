import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';

/** A row that no rule asks for. */
export function unknownAssumption(key: string, nearest: string | null): Trouble {
  return errorOf(
    'unknown-assumption',
    key,
    nearest ?? 'a row of the table as it ships',
    `nothing asks for the assumption ${quoted(key)}`,
    nearest === null ? 'delete the row' : `did you mean ${nearest}?`,
  );
}

/** The same row twice. */
export function assumptionTwice(key: string): Trouble {
  return errorOf(
    'assumption-twice',
    key,
    'every assumption once',
    `the assumption ${quoted(key)} is there twice`,
    'delete one of the rows',
  );
}

/** A row of the shipped table that the file lacks. */
export function missingAssumption(key: string, shipped: string): Trouble {
  return warningOf(
    'missing-assumption',
    '',
    shipped,
    `the assumption ${key} is not in the table; ${shipped} is taken`,
    'add the row again to change it',
  );
}

/** A row without a value. */
export function blankAssumption(key: string, shipped: string): Trouble {
  return errorOf(
    'blank-required',
    '',
    shipped,
    `the assumption ${key} is blank`,
    `as it ships it is ${shipped}`,
  );
}
