import { describe, expect, it } from 'vitest';
import { expectIssue } from './expect-issue.js';
import { type BrokenCase, edited, goodFiles, issuesIn, withFile } from './good-study.js';

const utf16 = (text: string, mark: boolean) => {
  const bytes = new Uint8Array(text.length * 2 + (mark ? 2 : 0));
  const view = new DataView(bytes.buffer);
  if (mark) view.setUint16(0, 0xfeff, true);
  for (let i = 0; i < text.length; i++) view.setUint16((mark ? 2 : 0) + 2 * i, text.charCodeAt(i), true);
  return bytes;
};

const latin1 = (text: string) => Uint8Array.from([...text], (character) => character.charCodeAt(0));

const packs = goodFiles['packs.csv'] as string;
const place = (file: string, line: number | null = null, column: string | null = null) => ({
  file,
  line,
  column,
});

const cases: BrokenCase[] = [
  {
    title: 'a study without show.csv',
    files: withFile('show.csv', null),
    code: 'missing-file',
    ...place('show.csv'),
    hint: 'add show.csv',
  },
  {
    title: 'a required file under a slightly wrong name',
    files: withFile('packs.csv', null, withFile('pack.csv', packs)),
    code: 'missing-file',
    ...place('packs.csv'),
    hint: 'Rename it to packs.csv',
  },
  {
    title: 'a file that is none of a study',
    files: withFile('criterias.csv', 'a,b\n1,2\n'),
    code: 'unknown-file',
    severity: 'warning',
    ...place('criterias.csv'),
    hint: 'did you mean criteria.csv?',
  },
  {
    title: 'the same file in two cases',
    files: withFile('Packs.csv', packs),
    code: 'same-file-twice',
    ...place('packs.csv'),
    hint: 'keep one',
  },
  {
    title: 'an empty file',
    files: withFile('packs.csv', ''),
    code: 'empty-file',
    ...place('packs.csv'),
    hint: '',
  },
  {
    title: 'a file of comments only',
    files: withFile('packs.csv', '# packs\n\n# none yet\n'),
    code: 'empty-file',
    ...place('packs.csv'),
    hint: '',
  },
  {
    title: 'a header without rows',
    files: withFile('packs.csv', 'id,chemistry,cells,capacity\n'),
    code: 'no-rows',
    ...place('packs.csv'),
    hint: '',
  },
  {
    title: 'a file of 30 MB',
    files: withFile('packs.csv', new Uint8Array(30 * 1024 * 1024).fill(97)),
    code: 'file-too-large',
    ...place('packs.csv'),
    hint: '',
  },
  {
    title: 'more rows than anybody writes',
    files: withFile('packs.csv', packs + 'pack-b,,lipo,2,1 Ah,\n'.repeat(10_050)),
    code: 'too-many-rows',
    ...place('packs.csv', 10_002),
    hint: 'right file',
  },
  {
    title: 'a row of nothing but separators',
    files: withFile('packs.csv', `${packs}pack-b${','.repeat(600)}\n`),
    code: 'too-many-columns',
    ...place('packs.csv', 3),
    hint: 'right file',
  },
  {
    title: 'UTF-16 without a byte order mark',
    files: withFile('packs.csv', utf16(packs, false)),
    code: 'utf-16-without-mark',
    ...place('packs.csv'),
    hint: 'UTF-8',
  },
  {
    title: 'bytes that are no UTF-8',
    files: withFile('packs.csv', latin1(packs.replace('2S pack', 'caf\xe9 pack'))),
    code: 'not-utf-8',
    severity: 'warning',
    ...place('packs.csv'),
    hint: 'save it as UTF-8',
  },
  {
    title: 'a zero character in the text',
    files: edited('packs.csv', '2S pack', '2S\u0000pack'),
    code: 'nul-character',
    ...place('packs.csv', 2),
    hint: 'save it again',
  },
  {
    title: 'a terminal escape in a label',
    files: edited('packs.csv', '2S pack', '\u001b[31m2S pack'),
    code: 'control-characters',
    severity: 'warning',
    ...place('packs.csv', 2, 'label'),
    hint: 'type the cell again',
  },
  {
    title: 'a right-to-left override in a question',
    files: edited('study.csv', 'Keep the servo?', 'Keep the \u202eovres?'),
    code: 'control-characters',
    severity: 'warning',
    ...place('study.csv', 2, 'value'),
    hint: 'type the cell again',
  },
  {
    title: 'a cell longer than any note',
    files: edited('packs.csv', '2S pack', 'x'.repeat(2_001)),
    code: 'cell-too-long',
    ...place('packs.csv', 2, 'label'),
    hint: 'quote missing',
  },
  {
    title: 'a quote that never closes',
    files: edited('packs.csv', '2S pack', '"2S pack'),
    code: 'bad-quotes',
    ...place('packs.csv', 2),
    hint: 'twice',
  },
  {
    title: 'a quote inside a quoted cell that is not doubled, after comments and a cell of two lines',
    files: withFile(
      'packs.csv',
      '# packs, "ours"\nid,label,chemistry,cells,capacity\npack-a,"two\nlines",lipo,2,2200 mAh\n# and\npack-b,"a 12" pack",lipo,2,1 Ah\n',
    ),
    code: 'bad-quotes',
    ...place('packs.csv', 6),
    hint: 'twice',
  },
];

describe('a broken file is named with its place', () => {
  it.each(cases)('$title', expectIssue);

  it('reads UTF-16 with its mark, and UTF-8 with a byte order mark, without a word', () => {
    expect(issuesIn(withFile('packs.csv', utf16(packs, true)))).toEqual([]);
    expect(issuesIn(withFile('packs.csv', `\ufeff${packs}`))).toEqual([]);
  });

  it('takes an optional file of comments, or a bare header, as not there', () => {
    expect(issuesIn(withFile('loads.csv', '# nothing yet\n'))).toEqual([]);
    expect(issuesIn(withFile('day.csv', 'block,minutes,activity\n'))).toEqual([]);
  });
});
