import { basename, dirname, join, resolve } from 'node:path';
import { unknownRecord } from '../archive/decision-messages.js';
import type { FileOperations } from '../archive/file-operations.js';
import { issueFor, ledgerAt, readRecord } from '../archive/read-archive.js';
import type { Issue, Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { type SoundRecord, soundRecord } from './records-source.js';

/**
 * A record by the path of its folder, checked; a damaged one is told file by file and not used.
 * @param path as typed
 */
export function findRecord(files: FileOperations, path: string): Result<SoundRecord> {
  const folder = resolve(path);
  const [archive, id] = [dirname(folder), basename(folder)];
  if (files.kindOf(folder) !== 'folder') {
    const known = neighbours(files, archive);
    const nearest = nearestName(id, known) ?? recordBelow(files, archive, id);
    return { ok: false, issues: [issueFor(path, unknownRecord(id, known, nearest))] };
  }
  const stored = readRecord(files, archive, id, ledgerAt(files, archive));
  const sound = soundRecord(stored);
  return sound === null
    ? { ok: false, issues: damageOf(stored.issues, path, id) }
    : { ok: true, value: sound, issues: stored.issues };
}

/** The record with its archive, where somebody left the archive out; null where no folder here has it. */
function recordBelow(files: FileOperations, folder: string, id: string): string | null {
  if (files.kindOf(folder) !== 'folder') return null;
  const archives = files.list(folder).filter(({ kind }) => kind === 'folder');
  const found = archives.find(({ name }) => neighbours(files, join(folder, name)).includes(id));
  return found === undefined ? null : `${found.name}/${id}`;
}

function neighbours(files: FileOperations, archive: string): string[] {
  if (files.kindOf(archive) !== 'folder') return [];
  return (ledgerAt(files, archive) ?? []).map(({ id }) => id);
}

/** A folder that is no record at all has every file missing: one issue says as much. */
function damageOf(issues: Issue[], path: string, id: string): Issue[] {
  const isRecord = issues.some(({ code }) => code !== 'missing-from-record');
  return isRecord ? issues : [issueFor(path, unknownRecord(id, [], null))];
}
