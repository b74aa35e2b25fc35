import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';
import { listed } from './value-messages.js';

/** The folder that the command reads is not there. */
export function missingFolder(hint: string): Trouble {
  return errorOf('missing-folder', '', 'a folder', 'there is no folder of this name', hint);
}

/** A file stands where a folder is read. */
export function fileForFolder(hint: string): Trouble {
  return errorOf('file-for-folder', '', 'a folder', 'this is a file, and a folder is expected', hint);
}

/** A folder without a single table. */
export function noTables(hint: string): Trouble {
  return errorOf(
    'no-tables',
    '',
    'study.csv and other CSV files',
    'there is no CSV file in this folder',
    hint,
  );
}

/** The system does not let a file or folder be read. */
export function unreadable(reason: string): Trouble {
  return errorOf(
    'unreadable',
    '',
    'something that can be read',
    `it cannot be read: ${quoted(reason, 200)}`,
    'check its permissions, and whether another program holds it',
  );
}

/** The system does not let something be written. */
export function unwritable(what: string, reason: string): Trouble {
  return errorOf(
    'unwritable',
    '',
    'a place that can be written',
    `${what} cannot be written: ${quoted(reason, 200)}`,
    'name another place',
  );
}

/** The disk did not confirm what was written. */
export function unconfirmed(what: string, reason: string): Trouble {
  return warningOf(
    'unconfirmed',
    '',
    'a disk that confirms what it has',
    `the disk has not confirmed that it has ${what}: ${quoted(reason, 200)}`,
    'write it once more if the machine stopped since',
  );
}

/** Files of a study are there already. */
export function wouldOverwrite(names: readonly string[]): Trouble {
  return errorOf(
    'would-overwrite',
    '',
    'a folder without files of a study',
    `there are ${listed(names.map((name) => quoted(name)))} already; nothing was written`,
    'name another folder, or fill in the files that are there',
  );
}

/** No candidate has this id. */
export function unknownCandidate(
  received: string,
  known: readonly string[],
  nearest: string | null,
): Trouble {
  return errorOf(
    'unknown-candidate',
    received,
    quoted(listed(known), 300),
    `there is no candidate “${quoted(received)}” in the study`,
    nearest === null ? 'give the id as in candidates.csv' : `did you mean ${quoted(nearest)}?`,
  );
}

/** No drive is said to exist today, and the command needs to know which one is meant. */
export function noBaseline(known: readonly string[]): Trouble {
  return errorOf(
    'no-baseline',
    '',
    quoted(listed(known), 300),
    'the study names no baseline',
    'say which drive with --candidate',
  );
}

/** No drive type is called so. */
export function unknownDriveType(
  received: string,
  known: readonly string[],
  nearest: string | null,
): Trouble {
  return errorOf(
    'unknown-drive-type',
    received,
    listed(known),
    `there is no drive type “${quoted(received)}”`,
    nearest === null ? '' : `did you mean ${nearest}?`,
  );
}

/** A flag that means nothing without another. */
export function flagNeeds(other: string): Trouble {
  return errorOf('flag-needs-another', '', `together with ${other}`, `this means nothing without ${other}`);
}

/** Flags that need each other, or exclude each other. */
export function flagsDisagree(message: string): Trouble {
  return errorOf('flags-disagree', '', '', message);
}

/** A sign that no font has. */
export function missingCharacter(character: string, context: string): Trouble {
  return warningOf(
    'missing-character',
    character,
    'a sign that the fonts have',
    `no font has ${quoted(character)}, it is shown as □ in “${quoted(context)}”`,
  );
}

/** The wording of the report cannot be read. */
export function badTemplate(reason: string): Trouble {
  return errorOf('bad-template', '', 'a template as it ships', reason);
}
