import type { Issue } from '../problem/issue.js';
import { issueAt, type Report } from '../problem/trouble.js';

/**
 * Takes issues as they are met; the same issue at the same place counts once. In a row with more cells than the header
 * nobody knows under which columns they belong: that is told, and nothing of what they seem to say.
 */
export interface IssueCollector {
  issues: readonly Issue[];
  report: Report;
}

/** A new, empty collector. */
export function issueCollector(): IssueCollector {
  const issues: Issue[] = [];
  const seen = new Set<string>();
  const shifted = new Set<string>();
  return {
    issues,
    report(place, trouble) {
      const row = JSON.stringify([place.file, place.line]);
      if (trouble.code === 'row-too-long') shifted.add(row);
      else if (shifted.has(row) && place.column !== null) return;
      const issue = issueAt(place, trouble);
      const key = JSON.stringify(issue);
      if (seen.has(key)) return;
      seen.add(key);
      issues.push(issue);
    },
  };
}
