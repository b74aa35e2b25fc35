import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { exitCodes } from './exit-codes.js';
import { refusedByWindows, systemReason } from './file-names.js';
import type { FileContent } from './files.js';
import { type Missing, missingCharacterIssues } from './missing-characters.js';
import type { Shell } from './shell.js';

/** What a command writes. */
export interface Output {
  /** Those that belong together, the one that can stand alone first. */
  files: readonly FileContent[];
  missingCharacters?: readonly Missing[];
}

/**
 * Writes what a command has made to the disk, and tells whatever is wrong with that; see `writeTogether` for what a
 * failure leaves.
 * @param what the files are, as a sentence begins with it: `the report`
 * @returns false when it could not be written; the exit code is set then
 */
export async function writeOut(shell: Shell, folder: string, output: Output, what: string): Promise<boolean> {
  const { disk } = await import('../archive/store.js');
  const { writeTogether } = await import('./write-together.js');
  const place = { file: folder, line: null, column: null };
  try {
    if (process.platform === 'win32') refuseOddNames([folder, ...output.files.map(({ name }) => name)]);
    const unconfirmed = writeTogether(disk, folder, output.files);
    if (unconfirmed !== null) shell.tell([issueAt(place, say.unconfirmed(what, unconfirmed))]);
  } catch (error) {
    shell.tell([issueAt(place, say.unwritable(what, systemReason(error)))]);
    shell.end(exitCodes.cannotWrite);
    return false;
  }
  const [{ name: file } = { name: '' }] = output.files;
  shell.tell(missingCharacterIssues(file, output.missingCharacters ?? []));
  return true;
}

/** @throws when Windows would write somewhere else, or nowhere */
function refuseOddNames(paths: string[]): void {
  for (const path of paths) {
    const reason = refusedByWindows(path);
    if (reason !== null) throw new Error(reason);
  }
}
