import { quoted } from '../problem/printable.js';
import { errorOf, type Trouble, warningOf } from '../problem/trouble.js';
import { listed } from '../problem/value-messages.js';

export { unknownCandidate } from '../problem/command-messages.js';

const meant = (nearest: string | null, otherwise: string): string =>
  nearest === null ? otherwise : `did you mean ${quoted(nearest)}?`;

/** No record has this id. */
export function unknownRecord(received: string, known: readonly string[], nearest: string | null): Trouble {
  return errorOf(
    'unknown-record',
    received,
    known.length === 0 ? 'an archive with records' : quoted(listed(known), 300),
    `there is no record “${quoted(received)}” in the archive`,
    meant(nearest, 'records <folder> lists them'),
  );
}

/** A reason without words. */
export function noReason(): Trouble {
  return errorOf(
    'no-reason',
    '',
    'the reason in your own words',
    'a decision needs its reason',
    'whoever opens the record next year asks why',
  );
}

/** Longer than anybody reads. */
export function textTooLong(received: string, longest: number): Trouble {
  return errorOf(
    'text-too-long',
    quoted(received, 40),
    `at most ${longest} characters`,
    `the text has ${received.length} characters; at most ${longest} are filed`,
  );
}

/** Looking again before or on the day of the decision. */
export function lookAgainTooEarly(received: string, date: string): Trouble {
  return errorOf(
    'look-again-too-early',
    received,
    `a date after ${date}`,
    `${quoted(received)} is not after the decision (${date})`,
  );
}

/** Adopted although it breaks a limit, or one could not be judged. */
export function adoptsWhatFails(label: string, obstacles: string): Trouble {
  return warningOf(
    'adopts-what-fails',
    '',
    'a candidate that passes every limit',
    `${quoted(label)} ${obstacles}`,
    'say in the reason why that is acceptable',
  );
}

/** `keep` of something that is not there, or `adopt` of what is. */
export function anotherWordMeant(label: string): Trouble {
  return warningOf(
    'another-word-meant',
    'adopt',
    'keep',
    `${quoted(label)} is the drive of today`,
    'keep is the word for it',
  );
}

/** Nothing that is not there can be kept. */
export function keepsWhatIsNotBuilt(label: string): Trouble {
  return errorOf(
    'keeps-what-is-not-built',
    'keep',
    'adopt, postpone or reject',
    `${quoted(label)} is not the drive of today, so it cannot be kept`,
    'adopt is the word for a change',
  );
}

/** A decision about the same question that still stands. */
export function standsBeside(id: string): Trouble {
  return warningOf(
    'stands-beside',
    '',
    'one standing decision for one question',
    `${quoted(id)} decides the same question and still stands`,
    `if this one replaces it, file it with --supersedes ${quoted(id)}`,
  );
}

/** A record that a later one has replaced already. */
export function supersededAlready(id: string, by: string): Trouble {
  return warningOf(
    'superseded-already',
    id,
    '',
    `${quoted(id)} was superseded by ${quoted(by)} before`,
    `is ${quoted(by)} meant?`,
  );
}

/** A record that is younger than the one that replaces it. */
export function supersedesLater(id: string, date: string): Trouble {
  return warningOf('supersedes-later', id, '', `${quoted(id)} is of a later date (${date})`);
}

/** Not `quantity=value`. */
export function notAMeasurement(received: string, known: readonly string[]): Trouble {
  return errorOf(
    'not-a-measurement',
    received,
    'quantity=value',
    received === '' ? 'nothing was measured' : `“${quoted(received)}” is not a measurement`,
    `write "runtime=95 min"; known are ${listed(known)}`,
  );
}

/** The same quantity again. */
export function measuredTwice(quantity: string): Trouble {
  return errorOf(
    'measured-twice',
    quantity,
    'every quantity once',
    `${quoted(quantity)} is given twice`,
    'log another day by another run of the command',
  );
}

/** The study of a record predicts no such figure. */
export function notPredicted(quantity: string, label: string): Trouble {
  return warningOf(
    'not-predicted',
    quantity,
    '',
    `the study predicts no ${quantity} for ${quoted(label)}; the reading is kept`,
  );
}
