import type { Issue } from '../problem/issue.js';
import { issueAt, type Report } from '../problem/trouble.js';

/** Takes issues as they are met; the same issue at the same place counts once. */
export interface IssueCollector {
  issues: readonly Issue[];
  report: Report;
}

/** A new, empty collector. */
export function issueCollector(): IssueCollector {
  const issues: Issue[] = [];
  const seen = new Set<string>();
  return {
    issues,
    report(place, trouble) {
      const issue = issueAt(place, trouble);
      const key = JSON.stringify(issue);
      if (seen.has(key)) return;
      seen.add(key);
      issues.push(issue);
    },
  };
}
