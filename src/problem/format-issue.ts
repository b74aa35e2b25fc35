import type { Issue, Place } from './issue.js';
import { printable, quoted } from './printable.js';

/** `study.csv:12 feature.mass`, with what is known of it. */
function formatPlace(place: Place): string {
  const line = place.line === null ? '' : `:${place.line}`;
  const column = place.column === null ? '' : ` ${place.column}`;
  return printable(`${place.file}${line}${column}`);
}

/**
 * An issue as lines for a person: place and message first, then what was read, what would be right and what to do,
 * each left out when there is nothing to say or another line says it already. Safe to print: control characters are removed.
 */
export function formatIssue(issue: Issue): string {
  const [message, expected, hint] = [issue.message, issue.expected, issue.hint].map(printable) as [
    string,
    string,
    string,
  ];
  const received = quoted(issue.received, 200);
  const lines = [`${issue.severity}: ${formatPlace(issue)}: ${message}`];
  if (received !== '' && !message.includes(received)) lines.push(`  read:     ${received}`);
  if (expected !== '' && !message.includes(expected) && !hint.includes(expected))
    lines.push(`  expected: ${expected}`);
  if (hint !== '') lines.push(`  hint:     ${hint}`);
  return lines.join('\n');
}

/**
 * The issues in the order in which a person works through the files.
 *
 * @param issues - in any order; issues of one line keep theirs
 * @param fileNames - the files in reading order; others follow
 */
export function inFileOrder(issues: readonly Issue[], fileNames: readonly string[]): Issue[] {
  const rank = (file: string) => {
    const index = fileNames.indexOf(file);
    return index < 0 ? fileNames.length : index;
  };
  return [...issues].sort((a, b) => rank(a.file) - rank(b.file) || (a.line ?? 0) - (b.line ?? 0));
}
