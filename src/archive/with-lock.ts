import { dirname } from 'node:path';
import type { Issue, Result } from '../problem/issue.js';
import type { FileOperations } from './file-operations.js';
import * as say from './filing-messages.js';
import { lockName, takeLock } from './lock.js';
import { issueFor } from './read-archive.js';
import { removeLeftovers } from './settle.js';

/**
 * Does something to an archive that nobody else may do at the same time. The folder is made when it is not there;
 * what a process left unfinished is removed first, and told.
 *
 * @param since ISO date-time that others read in the lock
 * @returns what the work returns, with what was told on the way; an issue when somebody else holds the archive, or
 *   when the system refuses a step
 */
export function withLock<T>(
  files: FileOperations,
  archive: string,
  since: string,
  work: () => Result<T>,
): Result<T> {
  const issues: Issue[] = [];
  try {
    if (files.kindOf(archive) === null) {
      files.makeFolders(archive);
      files.syncFolder(dirname(archive));
    }
    const locking = takeLock(files, archive, since);
    if (!locking.taken) {
      const busy = say.archiveBusy(locking.holder, locking.canAsk, lockName);
      return { ok: false, issues: [issueFor(archive, busy)] };
    }
    const { stale, release } = locking;
    if (stale !== null) issues.push(issueFor(lockName, say.staleLock(stale)));
    const result = releasing(release, issues, () => {
      issues.push(...removeLeftovers(files, archive));
      return work();
    });
    return { ...result, issues: [...issues, ...result.issues] };
  } catch (error) {
    return { ok: false, issues: [...issues, issueFor(archive, say.cannotWrite(reasonOf(error)))] };
  }
}

/** Releases the lock when the work has ended, well or badly; that it could not be is told. */
function releasing<T>(release: () => void, issues: Issue[], work: () => T): T {
  try {
    return work();
  } finally {
    try {
      release();
    } catch (error) {
      issues.push(issueFor(lockName, say.lockStays(reasonOf(error))));
    }
  }
}

/** What the system said. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
