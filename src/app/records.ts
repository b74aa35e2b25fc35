import type { FileOperations } from '../archive/file-operations.js';
import { readArchive, type StoredArchive, type StoredRecord } from '../archive/read-archive.js';
import { rebuildLedger } from '../archive/rebuild.js';
import { leftovers } from '../archive/settle.js';
import type { Issue, Result } from '../problem/issue.js';

/** An archive as `records` shows it. */
export interface ArchiveView {
  archive: StoredArchive;
  /** Everything told on the way, damage included; the archive is read all the same. */
  issues: Issue[];
  /** Whether the ledger could not be made anew although that was asked for. */
  isStuck: boolean;
}

/**
 * Reads and checks an archive. The ledger is made anew when that is asked for, and when a process broke off while
 * it filed.
 * @returns null when there is no such folder
 */
export function viewArchive(
  files: FileOperations,
  folder: string,
  now: string,
  rebuild: boolean,
): ArchiveView | null {
  const before = readArchive(files, folder);
  if (before === null) return null;
  const isFree = before.lock === null;
  const brokeOff = before.lockIsStale || (isFree && leftovers(files, folder).length > 0);
  if (!rebuild && !brokeOff) return { archive: before, issues: before.issues, isStuck: false };
  const rebuilt: Result<boolean> = rebuildLedger(files, folder, now);
  const after = readArchive(files, folder) ?? before;
  return { archive: after, issues: [...rebuilt.issues, ...after.issues], isStuck: rebuild && !rebuilt.ok };
}

/** How a record stands: sound, or what is the matter with it. */
export type RecordState = 'sound' | 'damaged' | 'superseded';

/** State of a record among the others. Damage weighs more than being replaced. */
export function stateOf(record: StoredRecord, all: readonly StoredRecord[]): RecordState {
  if (record.issues.length > 0) return 'damaged';
  return all.some((other) => other.record?.supersedes === record.id) ? 'superseded' : 'sound';
}
