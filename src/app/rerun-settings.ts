import { objectFrom } from '../archive/json-text.js';

/** Names under which a report carries its parts; inputs get theirs from the files of the study. */
export const carriedNames = {
  settings: 'rerun.json',
  results: 'results.json',
  schema: 'results.schema.json',
  /** The name that the standard gives to a description beside CSV files. */
  description: 'csv-metadata.json',
} as const;

const format = 'holdwright-rerun/1';

/** What a carried file is to the run: a file of the study, or one of the two tables beside the templates. */
const roles = ['input', 'assumptions', 'points-of-view'] as const;

/** A carried file: the name it had, the name it is carried under, and what it must still be. */
export interface CarriedFile {
  role: (typeof roles)[number];
  name: string;
  attachment: string;
  sha256: string;
}

/** How a report was made: with its files, all that the same report needs. */
export interface RerunSettings {
  format: typeof format;
  /** Version of the program. */
  version: string;
  page: 'A4' | 'Letter';
  /** Units in which figures are written; metric in reports that do not say. */
  units?: 'metric' | 'us' | undefined;
  /** ISO date-time that the report carries. */
  date: string;
  /** `item=value` pairs that replaced what the files say. */
  changes: string[];
  files: CarriedFile[];
}

/** The settings as they are carried. */
export function settingsText(settings: Omit<RerunSettings, 'format'>): string {
  return `${JSON.stringify({ format, ...settings }, null, 2)}\n`;
}

/** The settings as carried; null when somebody else, or another age, wrote them. */
export function settingsFrom(text: string): RerunSettings | null {
  const read = objectFrom(text);
  if (read === null || read.format !== format) return null;
  const { version, page, units, date, changes, files } = read;
  const isSound =
    [version, date].every(isText) &&
    (page === 'A4' || page === 'Letter') &&
    (units === undefined || units === 'metric' || units === 'us') &&
    Array.isArray(changes) &&
    changes.every(isText) &&
    Array.isArray(files) &&
    files.every(isCarriedFile);
  return isSound ? (read as unknown as RerunSettings) : null;
}

const isText = (value: unknown): boolean => typeof value === 'string';

function isCarriedFile(value: unknown): boolean {
  const { role, name, attachment, sha256 } = (value ?? {}) as Record<string, unknown>;
  return roles.some((known) => known === role) && [name, attachment, sha256].every(isText);
}
