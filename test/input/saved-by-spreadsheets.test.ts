import { describe, expect, it } from 'vitest';
import type { InputFile } from '../../src/input/files.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import { demoFiles } from '../app/demo.js';
import { rowsOf } from '../hostile/poisoned.js';

const assumptions = readAssumptions();
const plain = demoFiles('lantern-parade');

/** Every figure of the study, wherever it was written. */
function figuresOf(files: InputFile[]) {
  const read = readStudy(files, assumptions);
  expect(read.issues).toEqual([]);
  if (!read.ok) throw new Error('the study does not read');
  const { feature, pack, show, criteria, day, loads, candidates } = read.value;
  const sheets = candidates.map(({ id, sheet: { note: _, source: __, ...sheet } }) => ({ id, sheet }));
  const texts = new Set(['note', 'label', 'name', 'block', 'line', 'file']);
  return JSON.parse(
    JSON.stringify({ feature, pack, show, criteria, day, loads, sheets }, (key, value) =>
      texts.has(key) ? undefined : value,
    ),
  );
}

const rewritten = (change: (text: string) => Uint8Array): InputFile[] =>
  plain.map(({ name, bytes }) => ({ name, bytes: change(new TextDecoder().decode(bytes)) }));

const utf8 = (text: string) => new TextEncoder().encode(text);
const withLineEnds = (text: string, end: string) => text.replaceAll('\n', end);
const utf16 = (text: string) => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));

/** Cells apart by semicolons, decimal commas in all of them, quotes where they are needed. */
function withDecimalCommas(file: InputFile): InputFile {
  const cell = (text: string) => {
    const number = text.replace(/(?<![\d.-])(\d+)\.(\d+)/g, '$1,$2').replace(/\.\.(\d+)\.(\d+)/g, '..$1,$2');
    return /[;"\n]/.test(number) ? `"${number.replaceAll('"', '""')}"` : number;
  };
  const lines = rowsOf(file).map((cells) => cells.map(cell).join(';'));
  return { name: file.name, bytes: utf8(`\ufeff${lines.join('\r\n')}\r\n`) };
}

describe('a study as spreadsheets save it reads to the same figures', () => {
  const expected = figuresOf(plain);

  it.each([
    ['with CRLF', (text: string) => utf8(withLineEnds(text, '\r\n'))],
    ['with the line ends of old systems', (text: string) => utf8(withLineEnds(text, '\r'))],
    ['with a byte order mark', (text: string) => utf8(`\ufeff${text}`)],
    ['with a byte order mark and CRLF', (text: string) => utf8(`\ufeff${withLineEnds(text, '\r\n')}`)],
    ['in UTF-16 with CRLF', (text: string) => utf16(withLineEnds(text, '\r\n'))],
    ['without a line end at the end', (text: string) => utf8(text.trimEnd())],
    ['with blank lines at the end', (text: string) => utf8(`${text}\n,,,\n\n`)],
  ])('%s', (_, change) => {
    expect(figuresOf(rewritten(change))).toEqual(expected);
  });

  it('with semicolons, decimal commas, a byte order mark and CRLF', () => {
    expect(figuresOf(plain.map(withDecimalCommas))).toEqual(expected);
  });

  it('under names in other case, but not under two of them', () => {
    const upper = plain.map((file) => ({ ...file, name: file.name.toUpperCase() }));
    expect(figuresOf(upper)).toEqual(expected);
    const twins = readStudy([...plain, { ...plain[0]!, name: plain[0]!.name.toUpperCase() }], assumptions);
    expect(twins.issues.map(({ code }) => code)).toContain('same-file-twice');
  });
});
