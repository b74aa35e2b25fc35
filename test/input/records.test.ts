import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dialectOf } from '../../src/input/dialect.js';
import { recordsOf } from '../../src/input/records.js';
import type { Issue } from '../../src/problem/issue.js';
import { issueAt } from '../../src/problem/trouble.js';

function read(text: string) {
  const issues: Issue[] = [];
  const { delimiter, text: body } = dialectOf(text);
  const records = recordsOf(body, delimiter, 'a.csv', (place, trouble) =>
    issues.push(issueAt(place, trouble)),
  );
  return { delimiter, records, issues };
}

describe('the delimiter', () => {
  it.each([
    ['a,b,c\n1,2,3\n', ','],
    ['a;b\n1,5;2,5\n', ';'],
    ['a\tb\n1,5\t2,5\n', '\t'],
    ['# a comment, with, many, commas\na;b\n1;2\n', ';'],
    ['"# a comment, with; quotes",,\na,b\n1,2\n', ','],
    ['"a,b,c";d\n1;2\n', ';'],
    ['sep=;\na;b,c,d\n1;2\n', ';'],
    ['one\n2\n', ','],
  ])('of %j is %j', (text, delimiter) => expect(dialectOf(text).delimiter).toBe(delimiter));

  it('that a spreadsheet states leaves the line numbers as they are', () => {
    expect(read('sep=;\na;b\n1;2\n').records).toEqual([
      { line: 2, cells: ['a', 'b'] },
      { line: 3, cells: ['1', '2'] },
    ]);
  });
});

describe('records', () => {
  it('leave comments out, bare, padded by delimiters, quoted, and with quotes inside', () => {
    const text = 'a,b\n# plain\n# padded,,\n"# quoted, with comma",\n# a lone " quote\n  # indented\n1,2\n';
    expect(read(text).records).toEqual([
      { line: 1, cells: ['a', 'b'] },
      { line: 7, cells: ['1', '2'] },
    ]);
  });

  it('know their lines behind blank lines and cells of several lines', () => {
    const text = 'a,b\n\n"one\ntwo\n# no comment",2\n,,\n3,4\n\n';
    expect(read(text).records).toEqual([
      { line: 1, cells: ['a', 'b'] },
      { line: 3, cells: ['one\ntwo\n# no comment', '2'] },
      { line: 7, cells: ['3', '4'] },
    ]);
  });

  it('keep quotes inside bare cells', () => {
    expect(read('a,b\n12" rod,2\n').records?.[1]).toEqual({ line: 2, cells: ['12" rod', '2'] });
  });

  it('come back from any writing, with their lines', () => {
    const cell = fc.string({
      unit: fc.constantFrom('a', '1', ',', '"', ' ', '\n', '#', ';', 'é'),
      maxLength: 6,
    });
    const line = fc.oneof(
      {
        weight: 3,
        arbitrary: fc.record({ kind: fc.constant('row' as const), cells: fc.tuple(cell, cell, cell) }),
      },
      {
        weight: 1,
        arbitrary: fc.record({
          kind: fc.constant('comment' as const),
          text: fc.constantFrom('# x', '#, "', '# a,b,c'),
        }),
      },
      {
        weight: 1,
        arbitrary: fc.record({ kind: fc.constant('blank' as const), text: fc.constantFrom('', ',,', '  ') }),
      },
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        let text = 'x,y,z\n';
        let at = 2;
        const expected = [{ line: 1, cells: ['x', 'y', 'z'] }];
        for (const entry of lines) {
          if (entry.kind === 'row') {
            const cells = entry.cells as string[];
            const isComment = cells[0]!.trim().startsWith('#');
            const isBlank = cells.every((one) => one.trim() === '');
            if (!isComment && !isBlank) expected.push({ line: at, cells });
            const written = cells.map((one) => `"${one.replaceAll('"', '""')}"`).join(',');
            text += `${written}\n`;
            at += written.split('\n').length;
          } else {
            text += `${entry.text}\n`;
            at += 1;
          }
        }
        const { records, issues } = read(text);
        expect(issues).toEqual([]);
        expect(records).toEqual(expected);
      }),
      { numRuns: 500 },
    );
  });
});
