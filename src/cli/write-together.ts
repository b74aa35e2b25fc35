import { basename, dirname, join } from 'node:path';
import { type FileOperations, quietly, writeNew } from '../archive/file-operations.js';
import { systemReason } from './file-names.js';
import type { FileContent } from './files.js';

/** A file on its way: where it is written, where it goes, and where the earlier one waits meanwhile. */
interface Move {
  staged: string;
  final: string;
  aside: string;
  /** Whether an earlier file waits aside. */
  isAside: boolean;
  /** Whether the new file has its name. */
  isPlaced: boolean;
}

/**
 * Writes files that belong together so that what stands under their names always does: all as before, all new, or the
 * first alone, old or new, never an old one beside a new one.
 *
 * 1. Each is written to a name beside its own, down to the disk.
 * 2. Earlier ones are set aside, all but the first, which goes on standing alone.
 * 3. The new ones get their names; the first takes the place of the earlier first in one step.
 *
 * A failure before the first has its name takes everything back. After that the new first file stays, alone or with
 * those that followed it, and the message says which are missing. When the machine stops, the same holds without a
 * message; files with a dot in front that it leaves are swept by the next that succeeds.
 *
 * @param contents the one that can stand alone first
 * @returns null, or why the disk did not confirm the new names: they are there, and a power failure may take them back
 * @throws an error that says what stands there now
 */
export function writeTogether(
  files: FileOperations,
  folder: string,
  contents: readonly FileContent[],
): string | null {
  const moves = contents.map(({ name }) => moveOf(files, join(folder, name)));
  const folders = [...new Set([folder, ...moves.map(({ final }) => dirname(final))])];
  for (const each of folders) files.makeFolders(each);
  for (const { final } of moves)
    if (files.kindOf(final) === 'folder') throw new Error(`${final} is a folder`);
  let unconfirmed: string | null = null;
  const confirm = (): void => {
    try {
      for (const each of folders) files.syncFolder(each);
    } catch (error) {
      unconfirmed = (error as Error).message;
    }
  };
  const replaces = moves[0] !== undefined && files.kindOf(moves[0].final) !== null;
  try {
    moves.forEach(({ staged }, index) => {
      files.remove(staged);
      writeNew(files, staged, contents[index]!.bytes);
    });
    for (const move of moves.slice(1)) setAside(files, move);
    // Each name is on the disk before the next is given, so that no later file outlives an earlier one.
    if (moves.some(({ isAside }) => isAside)) confirm();
    for (const move of moves) {
      rename(files, move.staged, move.final);
      move.isPlaced = true;
      confirm();
    }
  } catch (error) {
    throw new Error(settle(files, moves, replaces, systemReason(error)));
  } finally {
    for (const { staged } of moves) quietly(() => files.remove(staged));
  }
  for (const { aside } of moves) quietly(() => files.remove(aside));
  quietly(() => sweep(files, folder, contents));
  return unconfirmed;
}

function moveOf({ writer }: FileOperations, final: string): Move {
  const hidden = join(dirname(final), `.${basename(final)}.${writer.process}`);
  return { staged: `${hidden}.partial`, final, aside: `${hidden}.earlier`, isAside: false, isPlaced: false };
}

function setAside(files: FileOperations, move: Move): void {
  if (files.kindOf(move.final) === null) return;
  rename(files, move.final, move.aside);
  move.isAside = true;
}

/** Renames; a system may do it and report a failure all the same, which is then none. */
function rename(files: FileOperations, from: string, to: string): void {
  try {
    files.rename(from, to);
  } catch (error) {
    if (files.kindOf(from) !== null || files.kindOf(to) === null) throw error;
  }
}

/** Puts things in order after a failure and says what stands there now. */
function settle(files: FileOperations, moves: readonly Move[], replaces: boolean, message: string): string {
  const placed = moves.filter(({ isPlaced }) => isPlaced);
  if (replaces && moves[0]!.isPlaced) {
    for (const { aside } of moves) quietly(() => files.remove(aside));
    const missing = moves.filter(({ isPlaced }) => !isPlaced);
    return `${message}; new is ${namesOf(placed)}; ${namesOf(missing)} is missing, the earlier one would not belong to it`;
  }
  for (const { final } of placed) quietly(() => files.remove(final));
  const waiting = moves.filter((move) => move.isAside && !isBack(files, move));
  const left = waiting.map(({ aside, final }) => `; the earlier ${basename(final)} is in ${basename(aside)}`);
  return `${message}${left.join('')}`;
}

function isBack(files: FileOperations, { aside, final }: Move): boolean {
  quietly(() => rename(files, aside, final));
  return files.kindOf(aside) === null;
}

function namesOf(moves: readonly Move[]): string {
  return moves.map(({ final }) => basename(final)).join(', ');
}

/** Removes what processes that were stopped have left of the same files. */
function sweep(files: FileOperations, folder: string, contents: readonly FileContent[]): void {
  for (const { name } of files.list(folder)) {
    const left = contents.map((content) => leftover(content.name, name)).find((process) => process !== null);
    if (left != null && !files.isRunning(left)) files.remove(join(folder, name));
  }
}

/** The process that left a file beside `name`; null for any other file. */
function leftover(name: string, found: string): string | null {
  if (!found.startsWith(`.${name}.`)) return null;
  return /^(\d+)\.(?:partial|earlier)$/.exec(found.slice(name.length + 2))?.[1] ?? null;
}
