import { quoted } from '../problem/printable.js';
import { errorOf, type Trouble, warningOf } from '../problem/trouble.js';

const undamaged = 'bring back the file from a copy of the archive';
const addLater = 'a record never changes: file a later one that supersedes it';

/** Holds something else than what was filed. */
export function changedFile(actual: string, expected: string): Trouble {
  return errorOf('changed-file', actual, expected, 'is not what was filed', undamaged);
}

/** Holds what another file of the record should hold. */
export function swappedFile(actual: string, expected: string, other: string): Trouble {
  return errorOf(
    'swapped-file',
    actual,
    expected,
    `holds what ${quoted(other, 120)} should hold`,
    'put both files back in their places',
  );
}

/** A PDF without its end. */
export function cutShort(actual: string, expected: string): Trouble {
  return errorOf('cut-short', actual, expected, 'breaks off before its end', undamaged);
}

/** Listed, but not there. */
export function missingFile(): Trouble {
  return errorOf('missing-from-record', '', 'the file as filed', 'is missing', undamaged);
}

/** There, but not listed. */
export function unlistedFile(): Trouble {
  return errorOf(
    'not-in-record',
    '',
    'only files that were filed',
    'was not filed with the record',
    `take it out of the folder; ${addLater}`,
  );
}

/** The file is there under another name. */
export function renamedFile(from: string): Trouble {
  return errorOf(
    'renamed-file',
    '',
    quoted(from, 120),
    `is ${quoted(from, 120)} under another name`,
    `rename it to ${quoted(from, 120)}`,
  );
}

/** A link in place of a file or folder. */
export function linkInRecord(): Trouble {
  return errorOf('link-in-record', '', 'a file', 'is a link; it was not followed', undamaged);
}

/** A device, pipe or the like; or a folder where a file should be. */
export function notAFile(): Trouble {
  return errorOf('not-a-file', '', 'a file', 'is no file', undamaged);
}

/** The system would not let it be read. */
export function unreadableFile(): Trouble {
  return errorOf('unreadable-file', '', 'a readable file', 'cannot be read', 'check its permissions');
}

/** A name that no file of a record has. */
export function strangeName(name: string): Trouble {
  return errorOf(
    'strange-name',
    name,
    'letters, digits, `.`, `_` and `-`',
    'has a name that no file of a record has',
    'take it out of the folder',
  );
}

/** Two names that are one on many systems. */
export function caseTwin(name: string, twin: string): Trouble {
  return errorOf(
    'case-twin',
    name,
    'names that differ in more than their case',
    `differs from ${quoted(twin, 120)} in nothing but case or accents; many systems keep only one of them`,
    'take out the one that was not filed',
  );
}

/** The same path twice in a manifest. */
export function listedTwice(path: string): Trouble {
  return errorOf('listed-twice', path, 'every file once', `lists ${quoted(path, 120)} twice`, undamaged);
}

/** A manifest line that is none. */
export function malformedLine(received: string): Trouble {
  return errorOf(
    'malformed-line',
    quoted(received),
    'a hash of 64 digits, two spaces and a path',
    'has a line that is no line of a manifest',
    undamaged,
  );
}

/** A path that leads out of the record. */
export function unsafePath(path: string): Trouble {
  return errorOf(
    'unsafe-path',
    quoted(path, 120),
    'a path inside the record',
    `lists ${quoted(path, 120)}, which leads out of the record; nothing there was read`,
    undamaged,
  );
}

/** A path in the wrong manifest. */
export function strayPath(path: string, below: string | null): Trouble {
  return errorOf(
    'stray-path',
    quoted(path, 120),
    below === null ? 'a file beside the payload' : `a path below ${below}/`,
    `lists ${quoted(path, 120)}, which belongs elsewhere`,
    undamaged,
  );
}

/** bagit.txt says something else. */
export function notABag(received: string, expected: string): Trouble {
  return errorOf('not-a-bag', quoted(received), quoted(expected), 'does not declare a bag', undamaged);
}

/** Bytes and files of the payload are others than counted. */
export function wrongCount(received: string, counted: string): Trouble {
  return errorOf(
    'wrong-count',
    received,
    counted,
    `counts ${quoted(received)} (bytes.files), but there are ${counted}`,
    undamaged,
  );
}

/** bag-info.txt lacks a line. */
export function missingLabel(label: string): Trouble {
  return errorOf('missing-label', '', label, `has no line ${label}`, undamaged);
}

/** The folder bears another name than the record. */
export function renamedRecord(received: string, folder: string): Trouble {
  return errorOf(
    'renamed-record',
    quoted(received),
    folder,
    `names the record ${quoted(received)}, but its folder is ${quoted(folder)}`,
    'give the folder its name back',
  );
}

/** decision.json cannot be understood. */
export function unreadableDecision(): Trouble {
  return errorOf('unreadable-decision', '', 'a decision', 'cannot be read as a decision', undamaged);
}

/** A record whose manifests agree with each other and not with the ledger. */
export function rewritten(actual: string, expected: string): Trouble {
  return errorOf(
    'rewritten-record',
    actual,
    expected,
    'has been written anew since it was filed: its files agree with each other, but not with the ledger',
    undamaged,
  );
}

/** In the ledger, without a folder. */
export function missingRecord(): Trouble {
  return errorOf(
    'missing-record',
    '',
    'the folder of the record',
    'is in the ledger, but its folder is missing',
    'bring it back from a copy of the archive; --rebuild would strike it from the ledger',
  );
}

/** A sound record that the ledger does not list. */
export function unlistedRecord(): Trouble {
  return errorOf(
    'unlisted-record',
    '',
    'a line in the ledger',
    'is a record that the ledger does not list',
    'records <folder> --rebuild makes the ledger anew from the records',
  );
}

/** The ledger says something else than the record. */
export function ledgerDiffers(): Trouble {
  return errorOf(
    'ledger-differs',
    '',
    'what the record says',
    'is told differently in the ledger',
    'records <folder> --rebuild makes the ledger anew from the records',
  );
}

/** The ledger is gone or no ledger. */
export function unreadableLedger(isMissing: boolean): Trouble {
  return errorOf(
    'unreadable-ledger',
    '',
    'a ledger',
    isMissing ? 'is missing' : 'cannot be read as a ledger',
    'records <folder> --rebuild makes it anew from the records',
  );
}

/** A folder or link in the archive that is no record. */
export function noRecord(): Trouble {
  return warningOf('no-record', '', 'records only', 'is no record and was passed over');
}

/** A log that cannot be understood, or speaks of another state of its record. */
export function unreadableLog(): Trouble {
  return errorOf(
    'unreadable-log',
    '',
    'a log of its record',
    'cannot be read as a log of its record',
    undamaged,
  );
}
