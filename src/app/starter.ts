import { driveKinds } from '../drives/columns.js';
import { fieldReference } from '../input/field-reference.js';
import type { InputFile } from '../input/files.js';
import { starterStudy } from '../input/starter-study.js';

/** Files of a study to fill in; or the words that are no drive type, and those that are. */
export type Starter = { files: InputFile[] } | { unknown: string[]; known: readonly string[] };

/**
 * Starts a study that compares drive types.
 * @param kinds as the user wrote them; none means all
 * @param allColumns with the columns too that few studies need
 */
export function starter(kinds: string[], allColumns = false): Starter {
  const unknown = kinds.filter((kind) => !driveKinds.some((known) => known === kind));
  if (unknown.length > 0) return { unknown, known: driveKinds };
  const chosen = driveKinds.filter((kind) => kinds.length === 0 || kinds.includes(kind));
  return { files: starterStudy(chosen, allColumns).map(({ name, text }) => encoded(name, text)) };
}

/** The wording and the charts of the report as files to edit, with the page that explains them. */
export function wordingCopy(templates: Readonly<Record<string, string>>): InputFile[] {
  return Object.entries(templates)
    .filter(([name]) => /^(?:report|charts)\/|^README\.md$/.test(name))
    .map(([name, text]) => encoded(name, text))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Every file, column and item of a study on one page to read. */
export function fieldsPage(): InputFile {
  return encoded('fields.md', fieldReference());
}

function encoded(name: string, text: string): InputFile {
  return { name, bytes: new TextEncoder().encode(text) };
}
