import { describe, expect, it } from 'vitest';
import { formatIssue, inFileOrder } from '../../src/problem/format-issue.js';
import type { Issue } from '../../src/problem/issue.js';
import { hasHiddenCharacters, printable, quoted } from '../../src/problem/printable.js';

const issue: Issue = {
  code: 'unit-of-another-dimension',
  severity: 'error',
  file: 'candidates.csv',
  line: 3,
  column: 'stall_torque',
  received: '35 oz',
  expected: 'a torque',
  message: '“35 oz” is a mass, a torque is expected: oz·in?',
  hint: 'write oz·in',
};

describe('an issue is printed', () => {
  it('with its place and message first', () => {
    expect(formatIssue(issue)).toBe(
      [
        'error: candidates.csv:3 stall_torque: “35 oz” is a mass, a torque is expected: oz·in?',
        '  hint:     write oz·in',
      ].join('\n'),
    );
  });

  it('with what was read and what is expected where neither message nor hint says it', () => {
    const terse = { ...issue, message: 'this is a mass', expected: 'a torque' };
    expect(formatIssue(terse).split('\n').slice(1)).toEqual([
      '  read:     35 oz',
      '  expected: a torque',
      '  hint:     write oz·in',
    ]);
  });

  it('without what is not known', () => {
    const bare = { ...issue, line: null, column: null, received: '', expected: '', hint: '' };
    expect(formatIssue(bare)).toBe('error: candidates.csv: “35 oz” is a mass, a torque is expected: oz·in?');
  });

  it('without escapes, bells and bidirectional controls from the file', () => {
    const nasty = {
      ...issue,
      received: 'a\u001b[2J\u001b]0;title\u0007b\u202ec\u0008\r\nd',
      column: 'x\u001b[31m',
    };
    const printed = formatIssue(nasty);
    expect(printed).toContain('  read:     abc d');
    expect(printed).toContain('candidates.csv:3 x:');
    expect(hasHiddenCharacters(printed)).toBe(false);
  });

  it('in file order, then by line, those of a whole file first', () => {
    const at = (file: string, line: number | null) => ({ ...issue, file, line });
    const sorted = inFileOrder(
      [at('b.csv', 2), at('a.csv', 9), at('b.csv', null), at('a.csv', 1)],
      ['a.csv', 'b.csv'],
    );
    expect(sorted.map(({ file, line }) => [file, line])).toEqual([
      ['a.csv', 1],
      ['a.csv', 9],
      ['b.csv', null],
      ['b.csv', 2],
    ]);
  });
});

describe('printable text', () => {
  it.each([
    ['\u001b[31mred\u001b[0m', 'red'],
    ['\u009b31mred', 'red'],
    ['\u001b]8;;http://x\u0007link\u001b]8;;\u0007', 'link'],
    ['one\ttwo\nthree', 'one two three'],
    ['\u2066left\u2069', 'left'],
    ['zero\u200bwidth', 'zerowidth'],
    ['plain Ω · µ °', 'plain Ω · µ °'],
  ])('%j is %j', (text, clean) => expect(printable(text)).toBe(clean));

  it('is cut to a line when it is quoted', () => {
    expect(quoted('x'.repeat(100))).toHaveLength(60);
    expect(quoted('x'.repeat(100)).endsWith('…')).toBe(true);
  });
});
