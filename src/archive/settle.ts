import { join } from 'node:path';
import type { Issue } from '../problem/issue.js';
import { bytesOf } from './digest.js';
import { type FileOperations, quietly, writeNew } from './file-operations.js';
import * as say from './filing-messages.js';
import { type LedgerEntry, ledgerName, ledgerText, sameEntry } from './ledger.js';
import { lockName } from './lock.js';
import { issueFor, readArchive, readRecord, type StoredRecord } from './read-archive.js';

/** Where a record is put together before it gets its name. */
export const stagedRecord = (id: string): string => `.filing-${id}`;

/** Where the ledger is written before it replaces the old one. */
export const stagedLedger = `.${ledgerName}.new`;

/** What the ledger of an archive must say, and what was put in order to get there. */
export interface Settled {
  entries: LedgerEntry[];
  /** Whether the ledger on the disk says something else. */
  differs: boolean;
  issues: Issue[];
}

/**
 * Names of what processes left unfinished when they broke off. Whoever holds the lock is the only one who may have
 * begun something; those that wait for it have a name of their own as long as they live.
 */
export function leftovers(files: FileOperations, archive: string): string[] {
  const begun = /^\.(?:filing-|ledger\.json\.new$|.*\.log-\d+\.json-)/;
  const names = files.list(archive).map(({ name }) => name);
  return names.filter((name) => {
    const writer = name.startsWith(`${lockName}-`) ? name.split('-').at(-1)! : null;
    return begun.test(name) || (writer !== null && !files.isRunning(writer));
  });
}

/** Removes what processes left unfinished. Call with the lock taken. */
export function removeLeftovers(files: FileOperations, archive: string): Issue[] {
  return leftovers(files, archive).map((name) => {
    files.remove(join(archive, name));
    return issueFor(name, say.leftoverRemoved(name));
  });
}

/**
 * What the ledger must say, when the old one and the folders do not disagree: quick, nothing is hashed. Where they
 * do, records are read and checked, as {@link rebuiltEntries} does.
 */
export function settledEntries(
  files: FileOperations,
  archive: string,
  ledger: LedgerEntry[] | null,
): Settled {
  const folders = files
    .list(archive)
    .filter(({ name, kind }) => kind === 'folder' && !name.startsWith('.'))
    .map(({ name }) => name);
  if (ledger !== null) {
    const unlisted = folders.filter((name) => !ledger.some(({ id }) => id === name));
    const found = unlisted
      .filter((id) => files.kindOf(join(archive, id, 'bagit.txt')) !== null)
      .map((id) => readRecord(files, archive, id, ledger));
    const taken = found.flatMap(({ entry }) => entry ?? []);
    if (taken.length === 0) return { entries: ledger, differs: false, issues: leftOut(found) };
    const added = taken.map(({ id }) => id).join(', ');
    const rebuilt = issueFor(ledgerName, say.ledgerRebuilt(`it did not list ${added}`));
    return { entries: [...ledger, ...taken], differs: true, issues: [rebuilt, ...leftOut(found)] };
  }
  return rebuiltEntries(files, archive);
}

/**
 * What the records themselves say, whatever the ledger does. A damaged record keeps its line in a ledger that can be
 * read, so that making it anew never hides what happened.
 */
export function rebuiltEntries(files: FileOperations, archive: string): Settled {
  const state = readArchive(files, archive);
  if (state === null) return { entries: [], differs: false, issues: [] };
  const { records, ledger, ledgerIsThere } = state;
  const kept = (id: string) => ledger?.find((entry) => entry.id === id);
  const entries = records.flatMap(({ id, entry }) => entry ?? kept(id) ?? []);
  const same =
    ledger !== null &&
    ledger.length === entries.length &&
    entries.every((entry) => {
      const line = kept(entry.id);
      return line !== undefined && sameEntry(entry, line);
    });
  if (same || (records.length === 0 && !ledgerIsThere)) return { entries, differs: false, issues: [] };
  const why = !ledgerIsThere ? 'it was missing' : ledger === null ? 'it could not be read' : 'it differed';
  const lost = records.filter(({ id, entry }) => entry === null && kept(id) === undefined);
  return {
    entries,
    differs: true,
    issues: [issueFor(ledgerName, say.ledgerRebuilt(why)), ...leftOut(lost)],
  };
}

function leftOut(records: readonly StoredRecord[]): Issue[] {
  return records
    .filter(({ entry }) => entry === null)
    .map(({ id }) => issueFor(id, say.leftOut('it is damaged')));
}

/** Writes a ledger beside the old one, down to the disk; nobody sees it before it is renamed. */
export function stageLedger(files: FileOperations, archive: string, entries: readonly LedgerEntry[]): void {
  writeNew(files, join(archive, stagedLedger), bytesOf(ledgerText(entries)));
}

/** Puts a ledger in place of the old one; either stands there complete. */
export function writeLedger(files: FileOperations, archive: string, entries: readonly LedgerEntry[]): void {
  try {
    stageLedger(files, archive, entries);
    files.rename(join(archive, stagedLedger), join(archive, ledgerName));
    files.syncFolder(archive);
  } catch (error) {
    quietly(() => files.remove(join(archive, stagedLedger)));
    throw error;
  }
}
