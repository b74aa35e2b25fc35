import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagFiles, infoValue } from '../../src/archive/bag.js';
import { bytesOf, textOf } from '../../src/archive/digest.js';
import { isInside, manifestText, readManifest } from '../../src/archive/manifest.js';
import { payloadNames } from '../../src/archive/payload-names.js';
import { emptyFolder, filed, payload, textsBelow } from './fixture.js';

const info = {
  id: '2026-03-14-adopt-worm-a',
  description: 'adopt Worm A: Change the drive?',
  contact: 'two makers',
  date: '2026-03-14',
  software: 'holdwright 0.1.0',
};
const texts = (files: { path: string; bytes: Uint8Array }[]) =>
  Object.fromEntries(files.map(({ path, bytes }) => [path, textOf(bytes)]));

describe('a bag', () => {
  const bag = texts(bagFiles(payload, info));

  it('declares itself, its information and its manifests as RFC 8493 asks', () => {
    expect(bag['bagit.txt']).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n');
    const bytes = payload.reduce((sum, file) => sum + file.bytes.length, 0);
    expect(bag['bag-info.txt']).toBe(
      [
        'Bag-Software-Agent: holdwright 0.1.0',
        'Bagging-Date: 2026-03-14',
        'Contact-Name: two makers',
        'External-Description: adopt Worm A: Change the drive?',
        'External-Identifier: 2026-03-14-adopt-worm-a',
        `Payload-Oxum: ${bytes}.4`,
        '',
      ].join('\n'),
    );
    expect(bag['tagmanifest-sha256.txt']).toMatch(
      /^[0-9a-f]{64} {2}bag-info\.txt\n[0-9a-f]{64} {2}bagit\.txt\n[0-9a-f]{64} {2}manifest-sha256\.txt\n$/,
    );
  });

  it('lists every file of the payload once, sorted, whatever the order in which they come', () => {
    const paths = bag['manifest-sha256.txt']!.trim()
      .split('\n')
      .map((line) => line.slice(66));
    expect(paths).toEqual(payload.map(({ path }) => `data/${path}`).sort());
    expect(texts(bagFiles([...payload].reverse(), info))).toEqual(bag);
  });

  it('passes the checksum tool of the system', () => {
    const folder = filed(emptyFolder()).folder;
    for (const manifest of ['manifest-sha256.txt', 'tagmanifest-sha256.txt']) {
      const { status, stdout } = spawnSync('sha256sum', ['--strict', '-c', manifest], {
        cwd: folder,
        encoding: 'utf8',
      });
      expect([status, stdout]).toEqual([0, stdout.replace(/FAILED/g, '')]);
    }
  });

  it('is the same, byte for byte, when it is filed twice', () => {
    const [first, second] = [filed(emptyFolder()).folder, filed(emptyFolder()).folder];
    expect(textsBelow(second)).toEqual(textsBelow(first));
  });

  it('keeps line ends and every other byte of what it is given', () => {
    const folder = filed(emptyFolder()).folder;
    expect(readFileSync(join(folder, 'data/inputs/show.csv'), 'utf8')).toContain('\r\n');
    for (const { path, bytes } of payload)
      expect(readFileSync(join(folder, 'data', path)).equals(bytes), path).toBe(true);
  });

  it('puts a hostile name on one line of its information', () => {
    const contact = 'a\r\nPayload-Oxum: 1.1\nb\u001b[31m\u202e%0A';
    const text = texts(bagFiles(payload, { ...info, contact }))['bag-info.txt']!;
    expect(text).toContain('Contact-Name: a Payload-Oxum: 1.1 b%0A\n');
    expect(text.split('\n').length).toBe(7);
  });
});

describe('bag-info.txt', () => {
  it('is read whatever the case of its labels, and where lines are folded', () => {
    const text = 'Source: here\r\nexternal-identifier:  one\r\n\ttwo\r\nPayload-Oxum: 1.1\r\n';
    expect(infoValue(text, 'External-Identifier')).toEqual({ value: 'one two', line: 2 });
    expect(infoValue(text, 'Payload-Oxum')).toEqual({ value: '1.1', line: 4 });
    expect(infoValue(text, 'Bagging-Date')).toBeNull();
  });
});

describe('a manifest', () => {
  it.each([
    '/etc/passwd',
    '../x',
    'data/../x',
    'data/./x',
    'data//x',
    'data\\x',
    'C:/x',
    'C:x',
    '~/x',
    'data/x\u202ey',
    'data/x\ny',
    '',
  ])('%j leads out of a bag', (path) => {
    expect(isInside(path)).toBe(false);
  });

  it('written and read again is the same', () => {
    const part = fc.stringMatching(/^[A-Za-z0-9_-][A-Za-z0-9._-]{0,8}$/);
    const path = fc.array(part, { minLength: 1, maxLength: 4 }).map((parts) => `data/${parts.join('/')}`);
    const paths = fc.uniqueArray(path, { selector: (text) => text.toLowerCase() });
    fc.assert(
      fc.property(paths, (all) => {
        const lines = all.map((text) => ({ path: text, sha256: 'a'.repeat(64) }));
        const read = readManifest(manifestText(lines), 'data');
        expect(read.troubles).toEqual([]);
        expect(read.lines.map((line) => line.path)).toEqual([...all].sort());
      }),
    );
  });

  it('of another program is read: binary marks, capitals, line ends of Windows', () => {
    const text = `${'A'.repeat(64)} *data/x.csv\r\n${'b'.repeat(64)}  data/y.csv\r\n`;
    expect(readManifest(text, 'data').lines).toEqual([
      { path: 'data/x.csv', sha256: 'a'.repeat(64), line: 1 },
      { path: 'data/y.csv', sha256: 'b'.repeat(64), line: 2 },
    ]);
  });
});

describe('names in a payload', () => {
  it.each([
    ['study.csv', 'study.csv'],
    ['C:\\shows\\2026\\candidates-früh.csv', 'candidates-fruh.csv'],
    ['candidates-my list (2).csv', 'candidates-my_list_2_.csv'],
    ['shows/loads.csv', 'loads.csv'],
    ['..\\..\\evil.csv', 'evil.csv'],
    ['CON.csv', 'file-CON.csv'],
    ['.hidden.csv', '_hidden.csv'],
    ['-rf.csv', '_rf.csv'],
    ['dot.csv.', 'dot.csv'],
    ['蛇.csv', '_.csv'],
    ['', 'file-'],
    ['a\u202ebsc.exe%0A', 'a_bsc.exe_0A'],
  ])('%j is kept as %s', (name, kept) => {
    expect(payloadNames([name])).toEqual([kept]);
  });

  it('stay apart where only case, accents or folders told them apart', () => {
    expect(payloadNames(['Loads.csv', 'loads.csv', 'löads.csv', 'x/loads.csv'])).toEqual([
      'Loads.csv',
      'loads-2.csv',
      'loads-3.csv',
      'loads-4.csv',
    ]);
  });

  it('are safe, short, and no two alike, for whatever names', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 200 }), { maxLength: 20 }), (names) => {
        const kept = payloadNames(names);
        for (const name of kept) {
          expect(name).toMatch(/^[A-Za-z0-9_][A-Za-z0-9._-]*$/);
          expect(name.length).toBeLessThan(110);
          expect(isInside(name)).toBe(true);
        }
        expect(new Set(kept.map((name) => name.toLowerCase())).size).toBe(names.length);
      }),
    );
  });
});

it('text and bytes are UTF-8', () => {
  expect(textOf(bytesOf('Ω ≥ 1'))).toBe('Ω ≥ 1');
});
