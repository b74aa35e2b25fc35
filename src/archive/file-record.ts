import { dirname, join } from 'node:path';
import type { Issue, Result } from '../problem/issue.js';
import { printable } from '../problem/printable.js';
import { type BagFile, bagFiles, bagNames, sealOf } from './bag.js';
import { bytesOf, textOf } from './digest.js';
import { type FileOperations, quietly, writeNew } from './file-operations.js';
import * as say from './filing-messages.js';
import { type LedgerEntry, ledgerEntry, ledgerName, ledgerText } from './ledger.js';
import { issueFor, ledgerAt } from './read-archive.js';
import { type DecisionRecord, decisionText, recordFormat, recordId, type UnfiledDecision } from './record.js';
import { settledEntries, stagedLedger, stagedRecord, stageLedger } from './settle.js';
import { reasonOf, withLock } from './with-lock.js';

/** A decision to file with everything that belongs to it. */
export interface Filing {
  archive: string;
  decision: UnfiledDecision;
  /** Paths below the payload folder; decision.json is added. */
  payload: BagFile[];
  /** ISO date-time of the filing. */
  now: string;
  /** Program and version. */
  software: string;
}

/** A decision that is filed. */
export interface FiledRecord {
  record: DecisionRecord;
  entry: LedgerEntry;
  /** Folder of the record. */
  folder: string;
}

/**
 * Files a decision: the bag is put together in a folder of its own, written down to the disk and renamed, then the
 * ledger that lists it takes the place of the old one. Nothing that is there is overwritten. Whatever step fails,
 * either the record is filed and listed, or the archive is as it was.
 *
 * A process that is killed between the two renames leaves a complete record that the ledger does not list yet;
 * whoever takes the lock next lists it.
 */
export function fileRecord(files: FileOperations, filing: Filing): Result<FiledRecord> {
  const { archive } = filing;
  return withLock(files, archive, filing.now, () => {
    const settled = settledEntries(files, archive, ledgerAt(files, archive));
    const taken = files.list(archive).map(({ name }) => name);
    const id = recordId(filing.decision, taken);
    const record: DecisionRecord = { format: recordFormat, id, ...filing.decision };
    const bag = bagOf(record, filing);
    const entry = ledgerEntry(record, sealOf(bag));
    const staged = join(archive, stagedRecord(id));
    try {
      writeBag(files, staged, bag);
      stageLedger(files, archive, [...settled.entries, entry]);
      const issues = publish(files, archive, id, ledgerText([...settled.entries, entry]));
      return {
        ok: true,
        value: { record, entry, folder: join(archive, id) },
        issues: [...settled.issues, ...issues],
      };
    } finally {
      quietly(() => files.remove(staged));
      quietly(() => files.remove(join(archive, stagedLedger)));
    }
  });
}

function bagOf(record: DecisionRecord, { payload, now, software }: Filing): BagFile[] {
  const { id, decision, choice, question, by } = record;
  const files = [...payload, { path: 'decision.json', bytes: bytesOf(decisionText(record)) }];
  const subject = question === '' ? record.project : question;
  return bagFiles(files, {
    id,
    description: printable(`${decision} ${choice.label}: ${subject}`),
    contact: by,
    date: now.slice(0, 10),
    software,
  });
}

/** Writes a bag into a new folder: every file, then every folder, deepest first, down to the disk. */
function writeBag(files: FileOperations, folder: string, bag: readonly BagFile[]): void {
  const folders = new Set<string>();
  for (const { path } of bag)
    for (let above = dirname(path); above !== '.'; above = dirname(above)) folders.add(above);
  const fromTop = [...folders].sort();
  files.makeFolder(folder);
  for (const inside of fromTop) files.makeFolder(join(folder, inside));
  // The files that vouch for the payload come last, the one that vouches for those at the very end.
  for (const { path, bytes } of bag) writeNew(files, join(folder, path), bytes);
  for (const inside of fromTop.reverse()) files.syncFolder(join(folder, inside));
  files.syncFolder(folder);
}

/** Gives record and ledger their names; takes the record back when the ledger cannot follow. */
function publish(files: FileOperations, archive: string, id: string, ledger: string): Issue[] {
  const staged = join(archive, stagedRecord(id));
  const final = join(archive, id);
  try {
    files.rename(staged, final);
    files.syncFolder(archive);
    files.rename(join(archive, stagedLedger), join(archive, ledgerName));
    files.syncFolder(archive);
    return [];
  } catch (error) {
    const isThere = files.kindOf(join(final, bagNames.declaration)) !== null;
    if (isThere && ledgerReads(files, archive, ledger))
      return [issueFor(id, say.notConfirmed(reasonOf(error)))];
    if (isThere && !isTakenBack(files, final, staged)) return [issueFor(id, say.filedUnlisted(id))];
    throw error;
  }
}

function ledgerReads(files: FileOperations, archive: string, text: string): boolean {
  try {
    return textOf(files.read(join(archive, ledgerName))) === text;
  } catch {
    return false;
  }
}

function isTakenBack(files: FileOperations, final: string, staged: string): boolean {
  quietly(() => files.rename(final, staged));
  return files.kindOf(final) === null;
}
