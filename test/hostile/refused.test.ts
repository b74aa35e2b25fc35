import { describe, expect, it } from 'vitest';
import { type InputFile, roleOf } from '../../src/input/files.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import { formatIssue } from '../../src/problem/format-issue.js';
import type { Issue } from '../../src/problem/issue.js';
import { jsonText } from '../../src/problem/json-text.js';
import { idColumns, rowsOf, textColumns, wholeDemo, withTexts } from './poisoned.js';
import { hostileTexts, steering } from './texts.js';

const assumptions = readAssumptions();
const issuesOf = (files: InputFile[]): Issue[] => readStudy(files, assumptions).issues;
const files = wholeDemo();
const replaced = (file: InputFile): InputFile[] => files.map((one) => (one.name === file.name ? file : one));

/** Every text column of every file of the study. */
const everyColumn = files.flatMap((file) =>
  textColumns(roleOf(file.name)!).map(({ name }) => ({ file, column: name })),
);

/** The file with a text in every cell of one column, however long. */
function withCell(file: InputFile, column: string, text: string): InputFile {
  const marked = withTexts(file, (one) => (one === column ? 'PLACE' : ''));
  const bytes = new TextEncoder().encode(new TextDecoder().decode(marked.bytes).replaceAll('PLACE', text));
  return { name: file.name, bytes };
}

/** Every column of ids. */
const everyId = files.flatMap((file) => idColumns(roleOf(file.name)!).map((column) => ({ file, column })));

describe('a cell that is too much', () => {
  it('is looked for in every file', () => {
    expect(new Set(everyColumn.map(({ file }) => file.name)).size).toBe(8);
  });

  it.each(everyColumn.map(({ file, column }) => [file.name, column, file] as const))(
    'of 100 kB in %s, %s is refused with its place and never repeated',
    (name, column, file) => {
      const issues = issuesOf(replaced(withCell(file, column, 'x'.repeat(100_000))));
      const found = issues.find(({ code, column: at }) => code === 'cell-too-long' && at === column);
      expect(found).toMatchObject({ severity: 'error', file: name, line: expect.any(Number) });
      expect(formatIssue(found!).length).toBeLessThan(600);
    },
  );

  it.each(
    everyColumn
      .filter(({ file, column }) => {
        const { longest } = textColumns(roleOf(file.name)!).find(({ name }) => name === column)!;
        return longest < 2000;
      })
      .map(({ file, column }) => [file.name, column, file] as const),
  )('for the tables it stands in is refused in %s, %s', (name, column, file) => {
    const long = withCell(file, column, 'x'.repeat(101));
    expect(issuesOf(replaced(long))).toContainEqual(
      expect.objectContaining({
        code: 'cell-too-long',
        file: name,
        column,
        expected: 'at most 100 characters',
      }),
    );
  });
});

describe('a hostile id', () => {
  it.each(everyId.map(({ file, column }) => [file.name, column, file] as const))(
    'in %s, %s is refused, and its message steers nothing',
    (name, column, file) => {
      const [header, first] = rowsOf(file) as [string[], string[]];
      const before = first[header.indexOf(column)]!;
      for (const text of Object.values(hostileTexts)) {
        const cell = `"${text.replaceAll('"', '""')}"`;
        const whole = new TextDecoder().decode(file.bytes);
        const bytes = new TextEncoder().encode(whole.replace(new RegExp(`^${before}`, 'm'), () => cell));
        const found = issuesOf(replaced({ name, bytes })).filter(({ severity }) => severity === 'error');
        expect(found.length).toBeGreaterThan(0);
        for (const issue of found) {
          expect(formatIssue(issue)).not.toMatch(steering);
          expect(JSON.parse(jsonText(issue))).toEqual(issue);
        }
      }
    },
  );
});

describe('what no text file holds', () => {
  it.each(files.map((file) => [file.name, file] as const))(
    'a zero character in %s is told with its line',
    (name, file) => {
      const bytes = new TextEncoder().encode(`${new TextDecoder().decode(file.bytes)}# a\u0000b\n`);
      const line = new TextDecoder().decode(file.bytes).split('\n').length;
      expect(issuesOf(replaced({ name, bytes }))).toContainEqual(
        expect.objectContaining({ code: 'nul-character', file: name, line }),
      );
    },
  );

  it('half a character is read as Windows-1252 with a warning', () => {
    const half = [0xed, 0xa0, 0x80];
    const file = files.find(({ name }) => name === 'day.csv')!;
    const bytes = Uint8Array.from([...file.bytes, 0x23, ...half, 0x0a]);
    const issues = issuesOf(replaced({ name: 'day.csv', bytes }));
    expect(issues.map(({ code, severity }) => [code, severity])).toEqual([['not-utf-8', 'warning']]);
  });

  it('the name of a file steers nothing', () => {
    for (const text of Object.values(hostileTexts)) {
      const name = `candidates-${text.replaceAll('\n', '')}.csv`;
      const issues = issuesOf([...files, { name, bytes: new TextEncoder().encode('id,type\n') }]);
      for (const issue of issues) expect(formatIssue(issue)).not.toMatch(steering);
      expect(issues.length).toBeGreaterThan(0);
    }
  });
});
