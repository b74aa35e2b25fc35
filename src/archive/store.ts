import {
  closeSync,
  constants,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  type Stats,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import type { FileKind, FileOperations } from './file-operations.js';

const onWindows = process.platform === 'win32';

/** The disk of this machine: the only place where the archive touches files. */
export const disk: FileOperations = {
  kindOf(path) {
    try {
      return kindOf(lstatSync(path));
    } catch (error) {
      // Below a file, or in a folder that nobody may look into, there is nothing.
      if (['ENOENT', 'ENOTDIR', 'EACCES'].includes(codeOf(error))) return null;
      throw error;
    }
  },
  list(folder) {
    return readdirSync(folder, { withFileTypes: true })
      .map((entry) => ({ name: entry.name, kind: kindOf(entry) }))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  },
  read(path) {
    // Not blocking: a pipe with the name of a file must not stop the program.
    const handle = openSync(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
    try {
      return new Uint8Array(readFileSync(handle));
    } finally {
      closeSync(handle);
    }
  },
  makeFolder: (path) => mkdirSync(path),
  makeFolders: (path) => void mkdirSync(path, { recursive: true }),
  create: (path) => openSync(path, 'wx'),
  write: (handle, bytes) => writeFileSync(handle, bytes),
  sync: (handle) => fsyncSync(handle),
  close: (handle) => closeSync(handle),
  syncFolder(path) {
    // Windows opens no folders and writes their names by itself.
    if (onWindows) return;
    const handle = openSync(path, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  },
  rename: (from, to) => renameSync(from, to),
  remove: (path) => rmSync(path, { recursive: true, force: true }),
  writer: { process: String(process.pid), host: hostname() },
  isRunning,
};

function kindOf(entry: Pick<Stats, 'isFile' | 'isDirectory' | 'isSymbolicLink'>): FileKind {
  if (entry.isSymbolicLink()) return 'link';
  if (entry.isDirectory()) return 'folder';
  return entry.isFile() ? 'file' : 'other';
}

function isRunning(processId: string): boolean {
  try {
    // Signal 0 asks whether the process is there and does nothing to it.
    return process.kill(Number(processId), 0);
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? '';
