import type { Issue, Place, Severity } from './issue.js';

/** An issue that does not know its place yet: what a value parser reports. */
export type Trouble = Omit<Issue, keyof Place>;

/** Takes note of a trouble at a place; readers get one and never throw. */
export type Report = (place: Place, trouble: Trouble) => void;

/** Puts a trouble at a place. */
export function issueAt(place: Place, trouble: Trouble): Issue {
  return { file: place.file, line: place.line, column: place.column, ...trouble };
}

/** An error with its texts; `hint` may be left out when the message says it all. */
export function errorOf(
  code: string,
  received: string,
  expected: string,
  message: string,
  hint = '',
): Trouble {
  return troubleOf('error', code, received, expected, message, hint);
}

/** A warning with its texts. */
export function warningOf(
  code: string,
  received: string,
  expected: string,
  message: string,
  hint = '',
): Trouble {
  return troubleOf('warning', code, received, expected, message, hint);
}

function troubleOf(
  severity: Severity,
  code: string,
  received: string,
  expected: string,
  message: string,
  hint: string,
): Trouble {
  return { code, severity, expected, received, message, hint };
}
