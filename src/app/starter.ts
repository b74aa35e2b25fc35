import { driveKinds } from '../drives/columns.js';
import type { InputFile } from '../input/files.js';
import { starterStudy } from '../input/starter-study.js';

/** Files of a study to fill in; or the words that are no drive type, and those that are. */
export type Starter = { files: InputFile[] } | { unknown: string[]; known: readonly string[] };

/**
 * Starts a study that compares drive types.
 * @param kinds as the user wrote them; none means all
 */
export function starter(kinds: string[]): Starter {
  const unknown = kinds.filter((kind) => !driveKinds.some((known) => known === kind));
  if (unknown.length > 0) return { unknown, known: driveKinds };
  const chosen = driveKinds.filter((kind) => kinds.length === 0 || kinds.includes(kind));
  const encoder = new TextEncoder();
  return { files: starterStudy(chosen).map(({ name, text }) => ({ name, bytes: encoder.encode(text) })) };
}
