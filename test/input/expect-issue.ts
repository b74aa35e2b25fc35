import { expect } from 'vitest';
import { type BrokenCase, issuesIn } from './good-study.js';

/** Reads the broken study and holds that the expected issue is there, and no other error. */
export function expectIssue(broken: BrokenCase): void {
  const { code, file, line, column, hint } = broken;
  const severity = broken.severity ?? 'error';
  const issues = issuesIn(broken.files, broken.changes);
  const found = issues.find((issue) => issue.code === code && issue.line === line && issue.column === column);
  expect(found ?? issues, broken.title).toMatchObject({ code, severity, file, line, column });
  expect(found?.hint).toContain(hint);
  expect(found?.message).not.toBe('');
  const follow = broken.others ?? [];
  const otherErrors = issues.filter(
    (issue) => issue.severity === 'error' && issue !== found && !follow.includes(issue.code),
  );
  expect(otherErrors).toEqual([]);
}
