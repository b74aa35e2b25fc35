import { missingCharacter } from '../problem/command-messages.js';
import type { Issue } from '../problem/issue.js';
import { issueAt } from '../problem/trouble.js';

/** A sign that no font has, and where it was read first; without a place where that is not known. */
export interface Missing {
  character: string;
  context: string;
  place?: { file: string; line: number } | null;
}

/**
 * Signs that no font has, as warnings about the line they came from.
 * @param file what they stand in where nobody knows the line
 */
export function missingCharacterIssues(file: string, missing: readonly Missing[]): Issue[] {
  return missing.map(({ character, context, place }) =>
    issueAt(
      { file: place?.file ?? file, line: place?.line ?? null, column: null },
      missingCharacter(character, context),
    ),
  );
}
