/** A file as it comes in: its name without folder, and its bytes. */
export interface InputFile {
  name: string;
  bytes: Uint8Array;
}

/** What a file of the study folder holds. */
export type FileRole = 'study' | 'candidates' | 'show' | 'packs' | 'loads' | 'criteria' | 'day' | 'measured';

/** The files of a study in reading order; issues are listed in it. */
export const fileRoles: readonly { role: FileRole; file: string; required: boolean }[] = [
  { role: 'study', file: 'study.csv', required: true },
  { role: 'candidates', file: 'candidates.csv', required: true },
  { role: 'show', file: 'show.csv', required: true },
  { role: 'packs', file: 'packs.csv', required: true },
  { role: 'loads', file: 'loads.csv', required: false },
  { role: 'criteria', file: 'criteria.csv', required: false },
  { role: 'day', file: 'day.csv', required: false },
  { role: 'measured', file: 'measured.csv', required: false },
];

/** Name of the table of defaults, beside the templates. */
export const assumptionsFile = 'assumptions.csv';

/** Largest file that is read. */
export const largestFileBytes = 20 * 1024 * 1024;

/** Most rows of a table. */
export const mostRows = 10_000;

/** Most columns of a table. */
export const mostColumns = 500;

/** What a file name says its content is; null for a name the study folder does not know. */
export function roleOf(name: string): FileRole | null {
  const lower = name.toLowerCase();
  if (/^candidates-.+\.csv$/.test(lower)) return 'candidates';
  return fileRoles.find(({ file }) => file === lower)?.role ?? null;
}

/** The names in reading order: by role, `candidates.csv` before `candidates-*.csv`, then by name. */
export function inReadingOrder(names: readonly string[]): string[] {
  const rank = (name: string) => {
    const role = roleOf(name);
    return role === null ? fileRoles.length : fileRoles.findIndex((entry) => entry.role === role);
  };
  const isMain = (name: string) => (name.includes('-') ? 1 : 0);
  return [...names].sort(
    (a, b) => rank(a) - rank(b) || isMain(a) - isMain(b) || (a < b ? -1 : a > b ? 1 : 0),
  );
}
