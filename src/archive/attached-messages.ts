import { quoted } from '../problem/printable.js';
import { errorOf, type Trouble } from '../problem/trouble.js';

const report = 'a report.pdf as holdwright wrote it';
const useFolder = 'take an undamaged copy, or make the report from the study folder';

/** Not a PDF, or not one that can be read to its end. */
export function unreadablePdf(): Trouble {
  return errorOf(
    'unreadable-pdf',
    '',
    report,
    'is no PDF, or one that is cut short, damaged or locked',
    useFolder,
  );
}

/** A PDF that carries nothing to compute from. */
export function carriesNoStudy(): Trouble {
  return errorOf(
    'carries-no-study',
    '',
    report,
    'carries no study: it is not a report of this program, or its attachments were taken out',
    useFolder,
  );
}

/** Attachments of a form that this program does not know. */
export function unknownSettings(name: string): Trouble {
  return errorOf(
    'unknown-settings',
    quoted(name),
    report,
    'says how it was made in a form that this program does not know',
    'a later version of the program may know it',
  );
}

/** Listed among what the report was made from, and not there. */
export function missingAttachment(name: string): Trouble {
  return errorOf(
    'missing-attachment',
    quoted(name),
    report,
    `lacks the attachment ${quoted(name)}`,
    useFolder,
  );
}

/** Not the bytes that the report was made from. */
export function changedAttachment(name: string, actual: string, expected: string): Trouble {
  return errorOf(
    'changed-attachment',
    actual,
    expected,
    `carries ${quoted(name)} in another state than it was made from`,
    useFolder,
  );
}
