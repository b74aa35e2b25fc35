import type { Result } from '../problem/issue.js';
import type { FileOperations } from './file-operations.js';
import { rebuiltEntries, writeLedger } from './settle.js';
import { withLock } from './with-lock.js';

/**
 * Makes the ledger of an archive anew from its records, and removes what a process left unfinished.
 * @returns whether the ledger had to change
 */
export function rebuildLedger(files: FileOperations, archive: string, now: string): Result<boolean> {
  return withLock(files, archive, now, () => {
    const { entries, differs, issues } = rebuiltEntries(files, archive);
    if (differs) writeLedger(files, archive, entries);
    return { ok: true, value: differs, issues };
  });
}
