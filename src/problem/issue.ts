/** How much an issue weighs: an `error` stops the run, a `warning` is reported and the run goes on. */
export type Severity = 'error' | 'warning';

/** Where in which file something was read. Lines and columns count from 1, as editors show them. */
export interface Place {
  file: string;
  /** Line in the file, or null when the issue concerns the file as a whole. */
  line: number | null;
  /** Column name as written in the header, or item name in study.csv; null for a whole row. */
  column: string | null;
}

/**
 * One problem with what the user wrote: data, never an exception.
 * All problems of all files are collected and shown together, in file order.
 */
export interface Issue extends Place {
  /** Stable identifier, kebab-case: `unit-of-another-dimension`. */
  code: string;
  severity: Severity;
  /** What would be right, in words: `a torque such as 25 kg·cm`. */
  expected: string;
  /** What was read, verbatim (printed only after control characters are removed). */
  received: string;
  /** The sentence shown to the user. */
  message: string;
  /** What to do, or the nearest valid name; empty when the message says it all. */
  hint: string;
}

/** Either a value with the warnings met on the way, or the issues that prevented it. */
export type Result<T> = { ok: true; value: T; issues: Issue[] } | { ok: false; issues: Issue[] };
