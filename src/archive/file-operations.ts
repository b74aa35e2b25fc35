/** What stands under a path; links are never followed. */
export type FileKind = 'file' | 'folder' | 'link' | 'other';

/** A file opened for writing. */
export type Handle = number;

/** Who writes: one process on one machine. */
export interface Writer {
  /** Process id, as text. */
  process: string;
  host: string;
}

/**
 * Everything the archive asks of a file system, one small step each, so that a test can let any single one fail.
 * Paths are as given by the user. Every method throws the system's error when it cannot do its work.
 */
export interface FileOperations {
  /** null when nothing is there. */
  kindOf(path: string): FileKind | null;
  /** Entries of a folder in the order of their names. */
  list(folder: string): { name: string; kind: FileKind }[];
  /** The whole file; a link is refused. */
  read(path: string): Uint8Array;
  /** Makes one folder; refused when something has its name. */
  makeFolder(path: string): void;
  /** Makes a folder with those above it, as far as they are missing. */
  makeFolders(path: string): void;
  /** Opens a file that must not be there yet. */
  create(path: string): Handle;
  write(handle: Handle, bytes: Uint8Array): void;
  /** Returns when what was written is on the disk. */
  sync(handle: Handle): void;
  close(handle: Handle): void;
  /** Returns when the names in a folder are on the disk. */
  syncFolder(path: string): void;
  /** Moves a file or folder; a file replaces a file, a folder only an empty folder. */
  rename(from: string, to: string): void;
  /** Removes a file, or a folder with all in it; nothing happens when nothing is there. */
  remove(path: string): void;
  /** This process. */
  writer: Writer;
  /** Whether a process of this machine is alive. */
  isRunning(process: string): boolean;
}

/** Writes a file that must not be there yet, down to the disk. What was begun stays when it fails. */
export function writeNew(files: FileOperations, path: string, bytes: Uint8Array): void {
  const handle = files.create(path);
  try {
    files.write(handle, bytes);
    files.sync(handle);
  } finally {
    files.close(handle);
  }
}

/** Does something and forgets that it failed: for tidying up after another failure. */
export function quietly(step: () => void): void {
  try {
    step();
  } catch {
    // The failure before this one is the one to tell.
  }
}
