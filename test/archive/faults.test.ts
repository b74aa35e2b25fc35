import { cpSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type DayLog, logFormat, writeLog } from '../../src/archive/day-log.js';
import type { FileOperations } from '../../src/archive/file-operations.js';
import { fileRecord } from '../../src/archive/file-record.js';
import { ledgerName, ledgerText } from '../../src/archive/ledger.js';
import { readArchive } from '../../src/archive/read-archive.js';
import { rebuildLedger } from '../../src/archive/rebuild.js';
import { type Fault, faulty, type Step } from './faulty.js';
import { emptyFolder, filed, filingInto, quickDisk, textsBelow } from './fixture.js';

/** The machine after it was switched on again: another process, the old one gone. */
const restarted: FileOperations = {
  ...quickDisk,
  writer: { ...quickDisk.writer, process: '999999999' },
  isRunning: () => false,
};

/** An archive with one record, copied for each fault; or none at all. */
const before = emptyFolder();
const firstId = filed(join(before, 'archive')).record.id;
const second = { decision: 'keep', choice: { id: 'servo-now', label: 'Servo' } } as const;
const secondId = '2026-03-14-keep-servo-now';

function archiveCopy(isNew: boolean): string {
  const folder = emptyFolder();
  if (!isNew) cpSync(before, folder, { recursive: true });
  return join(folder, 'archive');
}

/** The steps of filing a record when nothing fails. */
function stepsOf(isNew: boolean): { step: Step; path: string }[] {
  const { files, done } = faulty(quickDisk, null);
  expect(fileRecord(files, filingInto(archiveCopy(isNew), second)).ok).toBe(true);
  return done;
}

/** Every step, with every way in which it can fail. */
function everyFault(isNew: boolean, last: boolean): (Fault & { step: Step })[] {
  return stepsOf(isNew).flatMap(({ step }, index) => {
    const ways: Fault['how'][] = step === 'write' ? ['refused', 'half', 'done'] : ['refused', 'done'];
    return ways.map((how) => ({ at: index + 1, how, last, step }));
  });
}

/** Names in an archive that somebody sees. */
const seen = (archive: string): string[] =>
  existsSync(archive) ? readdirSync(archive).filter((name) => !name.startsWith('.')) : [];

/** What is wrong with an archive; nothing for one that is not there. */
const wrongIn = (archive: string): string[] =>
  (readArchive(quickDisk, archive)?.issues ?? []).map(({ file, code }) => `${file} ${code}`);

/** Whether the ledger says what the records themselves say, byte for byte. */
function ledgerMatches(archive: string): boolean {
  const entries = (readArchive(quickDisk, archive)?.records ?? []).flatMap(({ entry }) => entry ?? []);
  if (!existsSync(join(archive, ledgerName))) return entries.length === 0;
  return readFileSync(join(archive, ledgerName), 'utf8') === ledgerText(entries);
}

describe.each([
  ['a new archive', true],
  ['an archive with a record', false],
])('one step that fails while a decision is filed in %s', (_, isNew) => {
  const old = isNew ? [] : [firstId];

  it('there are writes, syncs and renames among the steps', () => {
    const counted = stepsOf(isNew).map(({ step }) => step);
    expect(counted.filter((step) => step === 'write').length).toBeGreaterThanOrEqual(10);
    expect(counted.filter((step) => step === 'sync').length).toBeGreaterThanOrEqual(10);
    expect(counted.filter((step) => step === 'syncFolder').length).toBeGreaterThanOrEqual(5);
    expect(counted.filter((step) => step === 'rename').length).toBe(4);
  });

  it.each(everyFault(isNew, false))('$step, step $at, $how: filed and listed, or as before', (fault) => {
    const archive = archiveCopy(isNew);
    const result = fileRecord(faulty(quickDisk, fault).files, filingInto(archive, second));
    const ids = result.ok ? [...old, secondId] : old;
    expect(wrongIn(archive)).toEqual([]);
    expect(ledgerMatches(archive)).toBe(true);
    expect(seen(archive)).toEqual([...ids, ...(ids.length > 0 ? [ledgerName] : [])]);
    if (!result.ok) expect(result.issues.map(({ code }) => code)).toContain('cannot-write');
  });

  it.each(everyFault(isNew, true))(
    'everything from $step, step $at, $how on: nothing half stands there, and the next writer puts it in order',
    (fault) => {
      const archive = archiveCopy(isNew);
      fileRecord(faulty(quickDisk, fault).files, filingInto(archive, second));
      const unlisted = `${secondId} unlisted-record`;
      const noLedger = `${ledgerName} unreadable-ledger`;
      expect(wrongIn(archive).filter((wrong) => wrong !== unlisted && wrong !== noLedger)).toEqual([]);

      const stands = existsSync(join(archive, secondId));
      const next = fileRecord(restarted, filingInto(archive, { date: '2026-03-15' }));
      expect(next.ok).toBe(true);
      expect(wrongIn(archive)).toEqual([]);
      expect(ledgerMatches(archive)).toBe(true);
      const ids = [...old, ...(stands ? [secondId] : []), '2026-03-15-adopt-worm-a'];
      expect(readdirSync(archive)).toEqual([...ids, ledgerName].sort());
    },
  );
});

describe('one step that fails while the ledger is made anew', () => {
  const { files, done } = faulty(quickDisk, null);
  const broken = archiveCopy(false);
  quickDisk.remove(join(broken, ledgerName));
  rebuildLedger(files, broken, 'now');
  const faults = done.map(
    ({ step }, index) => ({ step, at: index + 1, how: 'refused', last: true }) as const,
  );

  it.each(faults)('$step, step $at: it is there complete, or not at all', (fault) => {
    const archive = archiveCopy(false);
    quickDisk.remove(join(archive, ledgerName));
    rebuildLedger(faulty(quickDisk, fault).files, archive, 'now');
    expect(!existsSync(join(archive, ledgerName)) || ledgerMatches(archive)).toBe(true);
    expect(rebuildLedger(restarted, archive, 'now').ok).toBe(true);
    expect(ledgerMatches(archive)).toBe(true);
    expect(readdirSync(archive)).toEqual([firstId, ledgerName]);
  });
});

describe('one step that fails while a day is logged', () => {
  const log: DayLog = {
    format: logFormat,
    record: firstId,
    seal: readArchive(quickDisk, join(before, 'archive'))!.ledger![0]!.seal,
    date: '2026-05-01',
    by: '',
    note: '',
    candidate: 'worm-a',
    version: '0.1.0',
    modelVersion: '1',
    measured: [{ quantity: 'runtime', written: '95 min', value: 5700, halfWidth: 285, predicted: 8460 }],
    finding: '',
  };
  const { files, done } = faulty(quickDisk, null);
  writeLog(files, archiveCopy(false), log);
  const faults = done.map(({ step }, index) => ({ step, at: index + 1, how: 'half', last: false }) as const);

  it.each(faults)('$step, step $at: the record and its other logs are untouched', (fault) => {
    const archive = archiveCopy(false);
    writeLog(quickDisk, archive, log);
    const texts = textsBelow(archive);
    expect(() => writeLog(faulty(quickDisk, fault).files, archive, log)).toThrow();
    const after = textsBelow(archive);
    for (const [path, text] of Object.entries(texts)) expect(after[path], path).toBe(text);
    expect(wrongIn(archive)).toEqual([]);
  });
});
