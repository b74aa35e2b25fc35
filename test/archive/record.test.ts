import { describe, expect, it } from 'vitest';
import { jsonText, objectFrom } from '../../src/archive/json-text.js';
import { decisionText, isRecordId, readDecision, recordFormat, recordId } from '../../src/archive/record.js';
import { decisionOf } from './fixture.js';

const record = { format: recordFormat, id: '2026-03-14-adopt-worm-a', ...decisionOf() } as const;

describe('a decision', () => {
  it('written and read again is the same', () => {
    expect(readDecision(decisionText(record))).toEqual(record);
  });

  it('keeps a hostile reason word for word, and prints none of it raw', () => {
    const because =
      'line one\nline two \u001b[31mred\u009b2J <script>alert(1)</script> %0A \u202eevil\u2028 \u{e0041}';
    const text = decisionText({ ...record, because });
    expect(readDecision(text)?.because).toBe(because);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2028]|\udb40/);
  });

  it.each([
    ['another format', { format: 'holdwright-record/2' }],
    ['an unknown word', { decision: 'adore' }],
    ['no reason', { because: undefined }],
    ['a reason that is no text', { because: 7 }],
    ['a choice that is no candidate', { choice: 'worm-a' }],
    ['inputs that are no list', { inputs: {} }],
    ['an input without hash', { inputs: [{ name: 'x', file: 'x' }] }],
    ['assumptions that are no file', { assumptions: 'x' }],
  ])('with %s is none', (_, change) => {
    expect(readDecision(JSON.stringify({ ...record, ...change }))).toBeNull();
  });

  it.each(['', 'null', '[]', '{', '"adopt"'])('is not found in %j', (text) => {
    expect(readDecision(text)).toBeNull();
  });
});

describe('the id of a record', () => {
  it.each([
    [{}, [], '2026-03-14-adopt-worm-a'],
    [{ decision: 'keep' }, [], '2026-03-14-keep-worm-a'],
    [{}, ['2026-03-14-adopt-worm-a'], '2026-03-14-adopt-worm-a-2'],
    [{}, ['2026-03-14-ADOPT-worm-a', '2026-03-14-adopt-worm-a-2'], '2026-03-14-adopt-worm-a-3'],
    [{ choice: { id: 'Größe_Ω', label: '' } }, [], '2026-03-14-adopt-gro-e'],
    [{ choice: { id: '蛇', label: '' } }, [], '2026-03-14-adopt-candidate'],
    [{ choice: { id: '../../etc', label: '' } }, [], '2026-03-14-adopt-etc'],
  ] as const)('%j beside %j is %s', (changes, taken, id) => {
    expect(recordId(decisionOf(changes), taken)).toBe(id);
    expect(isRecordId(id)).toBe(true);
  });

  it('stays short for a long candidate', () => {
    expect(recordId(decisionOf({ choice: { id: 'x'.repeat(500), label: '' } }), []).length).toBeLessThan(60);
  });

  it.each(['..', '.', '', 'a/b', 'A', '.filing-x', 'x'.repeat(101)])('%j is none', (name) => {
    expect(isRecordId(name)).toBe(false);
  });
});

describe('JSON for people', () => {
  it('says the same as plain JSON', () => {
    const tree = { text: '\u0085 \u200b \ufeff', list: [1, null, true], deep: { a: 'é' } };
    expect(objectFrom(jsonText(tree))).toEqual(tree);
  });
});
