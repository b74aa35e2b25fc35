import { missingCharacter } from '../problem/command-messages.js';
import type { Issue } from '../problem/issue.js';
import { issueAt } from '../problem/trouble.js';

/** Signs that no font has, as warnings about the file they stand in. */
export function missingCharacterIssues(
  file: string,
  missing: readonly { character: string; context: string }[],
): Issue[] {
  const place = { file, line: null, column: null };
  return missing.map(({ character, context }) => issueAt(place, missingCharacter(character, context)));
}
