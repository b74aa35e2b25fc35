import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { FileOperations } from '../../src/archive/file-operations.js';
import { fileRecord } from '../../src/archive/file-record.js';
import { lockHolder, takeLock } from '../../src/archive/lock.js';
import { readArchive } from '../../src/archive/read-archive.js';
import { faulty } from './faulty.js';
import { emptyFolder, filingInto, quickDisk } from './fixture.js';

/** A process of a machine; all those named here are alive unless said otherwise. */
function processOf(process: string, host: string, dead: string[] = []): FileOperations {
  return { ...quickDisk, writer: { process, host }, isRunning: (other) => !dead.includes(other) };
}

const codes = (result: { issues: { code: string }[] }) => result.issues.map(({ code }) => code);

describe('two writers', () => {
  it('do not file at the same time: the second is told who does', () => {
    const archive = emptyFolder();
    const first = takeLock(processOf('11', 'here'), archive, '2026-03-14T20:00:00Z');
    expect(first.taken).toBe(true);
    const second = fileRecord(processOf('12', 'here'), filingInto(archive));
    expect([second.ok, codes(second)]).toEqual([false, ['archive-busy']]);
    expect(second.issues[0]!.message).toMatch(/process 11 is filing since 2026-03-14T20:00:00Z/);
    expect(readdirSync(archive)).toEqual(['.lock']);
    if (first.taken) first.release();
    expect(readdirSync(archive)).toEqual([]);
    expect(fileRecord(processOf('12', 'here'), filingInto(archive)).ok).toBe(true);
  });

  it('that come at the same moment cannot both get in', () => {
    const archive = emptyFolder();
    const other = processOf('11', 'here');
    // The other one takes the lock after this one has looked and before it renames.
    const late: FileOperations = {
      ...processOf('12', 'here'),
      rename(from, to) {
        if (to.endsWith('.lock') && lockHolder(other, archive) === null) takeLock(other, archive, 'first');
        quickDisk.rename(from, to);
      },
    };
    const result = fileRecord(late, filingInto(archive));
    expect([result.ok, codes(result)]).toEqual([false, ['archive-busy']]);
    expect(lockHolder(other, archive)?.process).toBe('11');
  });

  it('a reader sees no fault in a record that another process is just filing', () => {
    const archive = emptyFolder();
    const first = processOf('11', 'here');
    const { files, done } = faulty(first, null);
    fileRecord(files, filingInto(emptyFolder()));
    const at = done.findIndex(({ step, path }) => step === 'rename' && path.includes('.ledger')) + 1;
    const stopped = faulty(first, { at, how: 'refused', last: true });
    fileRecord(stopped.files, filingInto(archive));
    expect(readdirSync(archive)).toContain('2026-03-14-adopt-worm-a');
    expect(readArchive(processOf('12', 'here'), archive)!.issues).toEqual([]);
    expect(readArchive(processOf('12', 'here', ['11']), archive)!.issues.length).toBeGreaterThan(0);
  });
});

describe('a lock that was left behind', () => {
  it('by a process that is gone is taken over, and told', () => {
    const archive = emptyFolder();
    takeLock(processOf('11', 'here'), archive, '2026-03-14T20:00:00Z');
    const result = fileRecord(processOf('12', 'here', ['11']), filingInto(archive));
    expect([result.ok, codes(result)]).toEqual([true, ['stale-lock']]);
    expect(result.issues[0]!.message).toMatch(/process 11 broke off while filing/);
    expect(readdirSync(archive)).toEqual(['2026-03-14-adopt-worm-a', 'ledger.json']);
  });

  it('by a process with our own number, before the machine was started anew', () => {
    const archive = emptyFolder();
    takeLock(processOf('12', 'here'), archive, 'long ago');
    expect(codes(fileRecord(processOf('12', 'here'), filingInto(archive)))).toEqual(['stale-lock']);
  });

  it('on another machine is not judged from here: the hint says what to remove', () => {
    const archive = emptyFolder();
    takeLock(processOf('11', 'there'), archive, '2026-03-14T20:00:00Z');
    const result = fileRecord(processOf('12', 'here', ['11']), filingInto(archive));
    expect([result.ok, codes(result)]).toEqual([false, ['archive-busy']]);
    expect(result.issues[0]!.hint).toMatch(/remove the folder \.lock/);
  });

  it('without a name, or with a hostile one, is not judged either', () => {
    for (const holder of ['', '{}', '{"process":"\u001b[31m1","host":"x","since":"y"}']) {
      const archive = emptyFolder();
      mkdirSync(join(archive, '.lock'));
      writeFileSync(join(archive, '.lock', 'holder.json'), holder);
      const result = fileRecord(processOf('12', 'here'), filingInto(archive));
      expect([result.ok, codes(result)]).toEqual([false, ['archive-busy']]);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
      expect(result.issues[0]!.message).not.toMatch(/[\u0000-\u001f]/);
    }
  });

  it('as an empty folder holds nobody', () => {
    const archive = emptyFolder();
    mkdirSync(join(archive, '.lock'));
    expect(codes(fileRecord(processOf('12', 'here'), filingInto(archive)))).toEqual([]);
  });

  it('leaves no half record: what was begun is removed, and told', () => {
    const archive = emptyFolder();
    const stopped = faulty(processOf('11', 'here'), { at: 30, how: 'refused', last: true });
    fileRecord(stopped.files, filingInto(archive));
    expect(readdirSync(archive)).toEqual(['.filing-2026-03-14-adopt-worm-a', '.lock']);
    const result = fileRecord(processOf('12', 'here', ['11']), filingInto(archive));
    expect([result.ok, codes(result)]).toEqual([true, ['stale-lock', 'leftover-removed']]);
    expect(readdirSync(archive)).toEqual(['2026-03-14-adopt-worm-a', 'ledger.json']);
  });
});

describe('what is filed is on the disk', () => {
  it('every file is written down before the record gets its name, every folder too, then the archive', () => {
    const archive = emptyFolder();
    const { files, done } = faulty(quickDisk, null);
    fileRecord(files, filingInto(archive));
    const named = done.findIndex(({ step, path }) => step === 'rename' && path.includes('.filing-'));
    const before = done.slice(0, named);
    const paths = (step: string) => before.filter((entry) => entry.step === step).map(({ path }) => path);
    expect(paths('sync').sort()).toEqual(paths('create').sort());
    const folders = paths('makeFolder').filter((path) => path.includes('.filing-'));
    expect(folders.length).toBe(3);
    expect(
      paths('syncFolder')
        .filter((path) => path.includes('.filing-'))
        .sort(),
    ).toEqual(folders.sort());
    const after = done.slice(named).map(({ step, path }) => `${step} ${path.slice(archive.length + 1)}`);
    expect(after.slice(1, 4)).toEqual(['syncFolder ', 'rename .ledger.json.new', 'syncFolder ']);
  });
});
