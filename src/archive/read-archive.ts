import { join } from 'node:path';
import type { Issue } from '../problem/issue.js';
import { issueAt, type Trouble } from '../problem/trouble.js';
import { bagNames } from './bag.js';
import { type BagItem, checkBag, decisionPath } from './check-bag.js';
import { type DayLog, logsOf } from './day-log.js';
import { sha256Of, textOf } from './digest.js';
import type { FileOperations } from './file-operations.js';
import { inOrder, type LedgerEntry, ledgerEntry, ledgerName, readLedger, sameEntry } from './ledger.js';
import { isStale, type LockHolder, lockHolder } from './lock.js';
import * as say from './messages.js';
import { type DecisionRecord, isRecordId, readDecision } from './record.js';

/** A record as it stands on the disk. */
export interface StoredRecord {
  id: string;
  /** null when decision.json cannot be read, or is not what was filed. */
  record: DecisionRecord | null;
  /** What the ledger must say of it; null when the record is damaged. */
  entry: LedgerEntry | null;
  logs: DayLog[];
  issues: Issue[];
}

/** A record with what it holds. */
export interface OpenedRecord extends StoredRecord {
  /** Files of the payload, by path below its folder. */
  payload: ReadonlyMap<string, Uint8Array>;
}

/** An archive as it stands on the disk. */
export interface StoredArchive {
  /** By date. */
  records: StoredRecord[];
  /** What the ledger lists; null when it cannot be read. */
  ledger: LedgerEntry[] | null;
  ledgerIsThere: boolean;
  /** Who holds the lock; null when nobody does. */
  lock: LockHolder | null;
  lockIsStale: boolean;
  /** Everything wrong, records first, then the ledger. */
  issues: Issue[];
}

/**
 * Reads and checks an archive without changing anything in it.
 * @returns null when there is no such folder
 */
export function readArchive(files: FileOperations, archive: string): StoredArchive | null {
  if (files.kindOf(archive) !== 'folder') return null;
  const lock = lockHolder(files, archive);
  const ledgerIsThere = files.kindOf(join(archive, ledgerName)) !== null;
  const ledger = ledgerAt(files, archive);
  const issues: Issue[] = [];
  const records: StoredRecord[] = [];
  const entries = entriesOf(files, archive);
  if (entries === null) issues.push(issueFor(archive, say.unreadableFile()));
  for (const { name, kind } of entries ?? []) {
    if (name.startsWith('.') || kind === 'file') continue;
    const listed = ledger?.some(({ id }) => id === name) ?? false;
    const isBag =
      listed || (isRecordId(name) && files.kindOf(join(archive, name, bagNames.declaration)) !== null);
    if (isBag && kind === 'folder') {
      // An archive may hold more than the memory does: what the records hold is let go.
      const { payload: _, ...record } = readRecord(files, archive, name, ledger);
      records.push(record);
    } else issues.push(issueFor(name, listed ? say.linkInRecord() : say.noRecord()));
  }
  const lockIsStale = lock !== null && isStale(files, lock);
  // While another process files, its record may stand there before the ledger lists it.
  const isBeingFiled = lock !== null && !lockIsStale;
  const ledgerIssues = isBeingFiled ? [] : ledgerTroubles(records, ledger, ledgerIsThere);
  const all = [...records.flatMap((record) => record.issues), ...issues, ...ledgerIssues];
  const dated = records.map((record) => ({ ...record, date: dateOf(record, ledger) }));
  const inDateOrder = inOrder(dated).map(({ date: _, ...record }) => record);
  return { records: inDateOrder, ledger, ledgerIsThere, lock, lockIsStale, issues: all };
}

function dateOf({ id, record }: StoredRecord, ledger: LedgerEntry[] | null): string {
  return record?.date ?? ledger?.find((entry) => entry.id === id)?.date ?? '';
}

/** The entries of an archive's ledger; null when there is none that can be read. */
export function ledgerAt(files: FileOperations, archive: string): LedgerEntry[] | null {
  try {
    return readLedger(textOf(files.read(join(archive, ledgerName))));
  } catch {
    return null;
  }
}

/** One record of an archive with everything that is wrong with it. */
export function readRecord(
  files: FileOperations,
  archive: string,
  id: string,
  ledger: LedgerEntry[] | null,
): OpenedRecord {
  const items = itemsBelow(files, join(archive, id), '');
  const listed = ledger?.find((entry) => entry.id === id) ?? null;
  const damage = checkBag(id, items, listed?.seal ?? null);
  const bytesAt = (path: string) => items.find((item) => item.path === path)?.bytes ?? null;
  const decision = bytesAt(decisionPath);
  const isHurt = damage.some(({ file }) => file === `${id}/${decisionPath}`);
  const record = decision === null || isHurt ? null : readDecision(textOf(decision));
  const tagManifest = bytesAt(bagNames.tagManifest);
  const seal = tagManifest === null ? null : sha256Of(tagManifest);
  const entry = record === null || seal === null || damage.length > 0 ? null : ledgerEntry(record, seal);
  const { logs, issues } = logsOf(files, archive, id, listed?.seal ?? seal);
  const prefix = `${bagNames.payload}/`;
  const payload = items.flatMap(({ path, bytes }): [string, Uint8Array][] =>
    path.startsWith(prefix) && bytes !== null ? [[path.slice(prefix.length), bytes]] : [],
  );
  return { id, record, entry, payload: new Map(payload), logs, issues: [...damage, ...issues] };
}

/** Everything below a folder; a folder itself counts only when it is empty. */
function itemsBelow(files: FileOperations, folder: string, prefix: string): BagItem[] {
  const entries = entriesOf(files, folder);
  if (entries === null) return [{ path: prefix.slice(0, -1), kind: 'file', bytes: null }];
  return entries.flatMap(({ name, kind }): BagItem[] => {
    const path = `${prefix}${name}`;
    if (kind === 'folder') {
      const inside = itemsBelow(files, join(folder, name), `${path}/`);
      return inside.length > 0 ? inside : [{ path, kind, bytes: null }];
    }
    return [{ path, kind, bytes: kind === 'file' ? bytesOrNull(files, join(folder, name)) : null }];
  });
}

/** null when the system does not let a folder be read. */
function entriesOf(files: FileOperations, folder: string): ReturnType<FileOperations['list']> | null {
  try {
    return files.list(folder);
  } catch {
    return null;
  }
}

function bytesOrNull(files: FileOperations, path: string): Uint8Array | null {
  try {
    return files.read(path);
  } catch {
    return null;
  }
}

function ledgerTroubles(
  records: readonly StoredRecord[],
  ledger: LedgerEntry[] | null,
  isThere: boolean,
): Issue[] {
  if (ledger === null) {
    if (!isThere && records.length === 0) return [];
    return [issueFor(ledgerName, say.unreadableLedger(!isThere))];
  }
  const listed = new Map(ledger.map((entry) => [entry.id, entry]));
  const issues: Issue[] = [];
  for (const { id, entry } of records) {
    const line = listed.get(id);
    if (line === undefined) issues.push(issueFor(id, say.unlistedRecord()));
    else if (entry !== null && !sameEntry(entry, line)) issues.push(issueFor(id, say.ledgerDiffers()));
  }
  const there = new Set(records.map(({ id }) => id));
  for (const { id } of ledger) if (!there.has(id)) issues.push(issueFor(id, say.missingRecord()));
  return issues;
}

/** An issue with a file or folder of the archive as a whole. */
export function issueFor(file: string, trouble: Trouble): Issue {
  return issueAt({ file, line: null, column: null }, trouble);
}
