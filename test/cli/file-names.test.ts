import { describe, expect, it } from 'vitest';
import { bagFiles } from '../../src/archive/bag.js';
import { payloadNames } from '../../src/archive/payload-names.js';
import { recordId } from '../../src/archive/record.js';
import { refusedByWindows, systemReason } from '../../src/cli/file-names.js';

describe('a path on Windows', () => {
  it.each([
    'report',
    'C:\\Users\\maker\\report',
    'c:/studies/heron',
    '\\\\server\\share\\report',
    '..\\report',
    'my report (2)',
    'Wörter',
    'console',
    'nullify.csv',
  ])('%s is taken', (path) => {
    expect(refusedByWindows(path)).toBeNull();
  });

  it.each([
    ['CON', /device/],
    ['out\\nul', /device/],
    ['C:\\reports\\com1.csv', /device/],
    ['reports/AUX.txt/inside', /device/],
    ['what?', /takes no/],
    ['C:\\a\\b:c', /takes no/],
    ['report.', /drops/],
    ['report \\inside', /drops/],
  ])('%s is refused', (path, why) => {
    expect(refusedByWindows(path)).toMatch(why);
  });
});

describe('names that go into a record', () => {
  it('are base names without device names, drives, folders or twins, whichever separator was used', () => {
    const names = [
      'C:\\studies\\study.csv',
      'studies/Study.csv',
      'CON',
      'nul.csv',
      '..\\..\\packs.csv',
      'a:b.csv',
    ];
    const kept = payloadNames([...names, `${'x'.repeat(300)}.csv`]);
    for (const name of kept) {
      expect(name).toMatch(/^[A-Za-z0-9._-]{1,100}$/);
      expect(refusedByWindows(name)).toBeNull();
    }
    expect(new Set(kept.map((name) => name.toLowerCase())).size).toBe(kept.length);
    expect(kept[0]).toBe('study.csv');
  });

  it('are joined by forward slashes, and every text in a bag ends its lines with a line feed alone', () => {
    const info = { id: 'x', description: 'a\r\nb', contact: 'c', date: '2026-03-14', software: 's' };
    const files = bagFiles([{ path: 'inputs/study.csv', bytes: new Uint8Array() }], info);
    for (const { path, bytes } of files) {
      expect(path).not.toContain('\\');
      expect(new TextDecoder().decode(bytes)).not.toContain('\r');
    }
  });

  it('make ids of records that no system keeps for itself', () => {
    const choice = { id: 'CON', label: 'CON' };
    expect(refusedByWindows(recordId({ date: '2026-03-14', decision: 'adopt', choice }, []))).toBeNull();
  });
});

describe('what the system says', () => {
  it.each([
    ['EACCES', /permission/],
    ['EROFS', /only be read/],
    ['ENOSPC', /disk is full/],
    ['ENAMETOOLONG', /longer/],
    ['EEXIST', /a file stands/],
  ])('%s is told in words', (code, words) => {
    expect(systemReason(Object.assign(new Error('raw'), { code }))).toMatch(words);
  });

  it('is kept as it is where nobody knows it', () => {
    expect(systemReason(new Error('raw'))).toBe('raw');
  });
});
