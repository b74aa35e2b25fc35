import { formatIssue } from '../problem/format-issue.js';
import type { Issue } from '../problem/issue.js';
import type { Terminal } from './terminal.js';

/** Talks about issues, each with its place; nothing where there are none. */
export function talkAboutIssues(terminal: Terminal, issues: readonly Issue[]): void {
  if (issues.length > 0) terminal.talk(issues.map(formatIssue).join('\n'));
}
