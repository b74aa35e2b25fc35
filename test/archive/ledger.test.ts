import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileRecord } from '../../src/archive/file-record.js';
import { ledgerName, ledgerText, readLedger, sameEntry } from '../../src/archive/ledger.js';
import { readArchive } from '../../src/archive/read-archive.js';
import { rebuildLedger } from '../../src/archive/rebuild.js';
import { emptyFolder, filed, filingInto, quickDisk } from './fixture.js';

function threeRecords(): string {
  const archive = emptyFolder();
  filed(archive, { date: '2026-05-01', decision: 'keep', choice: { id: 'servo-now', label: 'Servo' } });
  filed(archive, { because: 'a reason\u001b[31m with\nlines' });
  filed(archive, { date: '2026-06-01', supersedes: '2026-05-01-keep-servo-now' });
  return archive;
}

const ledgerOf = (archive: string): string => readFileSync(join(archive, ledgerName), 'utf8');
const wrongIn = (archive: string): string[] =>
  readArchive(quickDisk, archive)!.issues.map(({ file, code }) => `${file} ${code}`);

describe('the ledger', () => {
  it('lists every record by date, with the hash that vouches for all of it', () => {
    const archive = threeRecords();
    const entries = readLedger(ledgerOf(archive))!;
    expect(entries.map(({ date }) => date)).toEqual(['2026-03-14', '2026-05-01', '2026-06-01']);
    expect(entries.every(({ seal }) => /^[0-9a-f]{64}$/.test(seal))).toBe(true);
    expect(wrongIn(archive)).toEqual([]);
  });

  it('is made from the records alone, byte for byte', () => {
    const archive = threeRecords();
    const before = ledgerOf(archive);
    for (const damage of [
      () => rmSync(join(archive, ledgerName)),
      () => writeFileSync(join(archive, ledgerName), before.slice(0, 200)),
      () => writeFileSync(join(archive, ledgerName), before.replace('"keep"', '"reject"')),
      () => writeFileSync(join(archive, ledgerName), ledgerText(readLedger(before)!.slice(1))),
    ]) {
      damage();
      expect(wrongIn(archive).length).toBe(1);
      const result = rebuildLedger(quickDisk, archive, 'now');
      expect(result).toMatchObject({ ok: true, value: true });
      expect(ledgerOf(archive)).toBe(before);
      expect(wrongIn(archive)).toEqual([]);
    }
  });

  it('is left alone where it is right', () => {
    const archive = threeRecords();
    expect(rebuildLedger(quickDisk, archive, 'now')).toEqual({ ok: true, value: false, issues: [] });
  });

  it('tells of a record that is gone, and strikes it only when it is made anew', () => {
    const archive = threeRecords();
    rmSync(join(archive, '2026-05-01-keep-servo-now'), { recursive: true });
    expect(wrongIn(archive)).toEqual(['2026-05-01-keep-servo-now missing-record']);
    filed(archive, { date: '2026-07-01' });
    expect(wrongIn(archive)).toEqual(['2026-05-01-keep-servo-now missing-record']);
    rebuildLedger(quickDisk, archive, 'now');
    expect(wrongIn(archive)).toEqual([]);
  });

  it.each(['', '{}', '[]', '{"format":"holdwright-ledger/1","records":[{}]}'])(
    'is not found in %j',
    (text) => {
      expect(readLedger(text)).toBeNull();
    },
  );

  it('lists no record twice', () => {
    const entries = readLedger(ledgerOf(threeRecords()))!;
    expect(readLedger(ledgerText([...entries, entries[0]!]))).toBeNull();
    expect(sameEntry(entries[0]!, entries[1]!)).toBe(false);
  });
});

describe('filing', () => {
  it('never touches what is there: the same decision again becomes another record', () => {
    const archive = emptyFolder();
    const first = filed(archive);
    const before = readFileSync(join(first.folder, 'tagmanifest-sha256.txt'));
    const second = filed(archive);
    expect(second.record.id).toBe(`${first.record.id}-2`);
    expect(readFileSync(join(first.folder, 'tagmanifest-sha256.txt')).equals(before)).toBe(true);
  });

  it('takes no name that a file or an empty folder has', () => {
    const archive = emptyFolder();
    writeFileSync(join(archive, '2026-03-14-adopt-worm-a'), 'mine');
    expect(filed(archive).record.id).toBe('2026-03-14-adopt-worm-a-2');
    expect(readFileSync(join(archive, '2026-03-14-adopt-worm-a'), 'utf8')).toBe('mine');
  });

  it('lists what a killed process left complete, and says so', () => {
    const archive = threeRecords();
    const ledger = readLedger(ledgerOf(archive))!;
    writeFileSync(join(archive, ledgerName), ledgerText(ledger.slice(0, 2)));
    const result = fileRecord(quickDisk, filingInto(archive, { date: '2026-08-01' }));
    expect(result.issues.map(({ file, code }) => `${file} ${code}`)).toEqual(['ledger.json ledger-rebuilt']);
    expect(readLedger(ledgerOf(archive))!.length).toBe(4);
    expect(wrongIn(archive)).toEqual([]);
  });

  it('makes the archive with the folders above it', () => {
    const archive = join(emptyFolder(), 'deep', 'records');
    filed(archive);
    expect(readdirSync(archive)).toEqual(['2026-03-14-adopt-worm-a', ledgerName]);
  });

  it('under a file ends with an issue that says so', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'file'), 'mine');
    const result = fileRecord(quickDisk, filingInto(join(folder, 'file', 'records')));
    expect([result.ok, result.issues.map(({ code }) => code)]).toEqual([false, ['cannot-write']]);
  });

  it('passes over what is no record, and says so', () => {
    const archive = threeRecords();
    writeFileSync(join(archive, 'read-me.txt'), 'mine');
    quickDisk.makeFolder(join(archive, 'photos'));
    expect(wrongIn(archive)).toEqual(['photos no-record']);
  });
});
