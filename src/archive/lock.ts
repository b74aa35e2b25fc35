import { join } from 'node:path';
import { bytesOf, textOf } from './digest.js';
import { type FileOperations, quietly, type Writer, writeNew } from './file-operations.js';
import { jsonText, objectFrom } from './json-text.js';

/** Who holds an archive, and since when. */
export interface LockHolder extends Writer {
  /** ISO date-time. */
  since: string;
}

/** Folder that stands in an archive while somebody files. */
export const lockName = '.lock';
const holderName = 'holder.json';

/** Stands for a holder that does not say who it is: as good as another machine. */
const somebody: LockHolder = { process: '?', host: '?', since: '?' };

/** The lock taken, with who left an old one behind; or who holds it. */
export type Locking =
  | { taken: true; stale: LockHolder | null; release(): void }
  | { taken: false; holder: LockHolder; canAsk: boolean };

/** Who holds an archive; null when nobody does. */
export function lockHolder(files: FileOperations, archive: string): LockHolder | null {
  return holderIn(files, join(archive, lockName));
}

/**
 * Whether a lock was left behind: its process was one of this machine and is gone. The lock of another machine is
 * never taken for one, as nobody here can tell.
 */
export function isStale(files: FileOperations, holder: LockHolder): boolean {
  if (holder.host !== files.writer.host) return false;
  return holder.process === files.writer.process || !files.isRunning(holder.process);
}

/**
 * Takes the lock of an archive. It is a folder made beside and renamed, so that it appears complete and only once:
 * a folder that is not empty is never replaced by another.
 *
 * @param since ISO date-time for others to read
 * @throws the system's error when the archive cannot be written
 */
export function takeLock(files: FileOperations, archive: string, since: string): Locking {
  const lock = join(archive, lockName);
  const mine = join(archive, `${lockName}-${files.writer.process}`);
  const release = () => {
    files.rename(lock, mine);
    files.remove(mine);
  };
  try {
    files.remove(mine);
    files.makeFolder(mine);
    writeNew(files, join(mine, holderName), bytesOf(jsonText({ ...files.writer, since })));
    const before = lockHolder(files, archive);
    if (before !== null && !isStale(files, before)) return refused(files, before, mine);
    if (before !== null) moveAside(files, lock, before);
    files.rename(mine, lock);
    return { taken: true, stale: before, release };
  } catch (error) {
    quietly(() => files.remove(mine));
    const holder = lockHolder(files, archive);
    if (holder === null) throw error;
    // Somebody else was quicker; or it is our own, by a step that was done and yet reported as failed.
    if (!isStale(files, holder)) return refused(files, holder, mine);
    if (isMine(files, holder)) quietly(release);
    throw error;
  }
}

function refused(files: FileOperations, holder: LockHolder, mine: string): Locking {
  quietly(() => files.remove(mine));
  return { taken: false, holder, canAsk: holder.host === files.writer.host };
}

const isMine = (files: FileOperations, { process, host }: LockHolder): boolean =>
  process === files.writer.process && host === files.writer.host;

/** Moves an old lock away; puts it back when it turns out to be another than the one that was judged. */
function moveAside(files: FileOperations, lock: string, judged: LockHolder): void {
  const aside = `${lock}-old-${files.writer.process}`;
  files.remove(aside);
  files.rename(lock, aside);
  const moved = holderIn(files, aside);
  if (moved !== null && isStale(files, moved) && moved.since === judged.since) files.remove(aside);
  else files.rename(aside, lock);
}

function holderIn(files: FileOperations, lock: string): LockHolder | null {
  const path = join(lock, holderName);
  if (files.kindOf(path) === null) return null;
  try {
    const { process, host, since } = objectFrom(textOf(files.read(path))) ?? {};
    if (typeof process !== 'string' || typeof host !== 'string' || typeof since !== 'string') return somebody;
    return { process, host, since };
  } catch {
    return somebody;
  }
}
