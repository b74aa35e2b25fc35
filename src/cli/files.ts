import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A file's name and what it holds. */
export interface FileContent {
  name: string;
  bytes: Uint8Array;
}

/** The program's own folder, found from this file wherever it was installed. */
const programFolder = fileURLToPath(new URL('../../', import.meta.url));

/** Version of the program, from its package file. */
export function programVersion(): string {
  return JSON.parse(readFileSync(join(programFolder, 'package.json'), 'utf8')).version;
}

/** Templates of wording and charts that came with the program, by name. */
export function templateTexts(): Record<string, string> {
  return textsBelow(join(programFolder, 'templates'), '');
}

function textsBelow(folder: string, prefix: string): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) Object.assign(texts, textsBelow(path, `${prefix}${entry.name}/`));
    else texts[`${prefix}${entry.name}`] = readFileSync(path, 'utf8');
  }
  return texts;
}

/**
 * The CSV files of a study folder, in name order.
 * @returns null when there is no such folder
 */
export function studyFiles(folder: string): FileContent[] | null {
  let names: string[];
  try {
    const entries = readdirSync(folder, { withFileTypes: true });
    names = entries.filter((entry) => !entry.isDirectory()).map((entry) => entry.name);
  } catch {
    return null;
  }
  const tables = names.filter((name) => name.toLowerCase().endsWith('.csv') && !name.startsWith('.'));
  return tables.sort().map((name) => ({ name, bytes: readFileSync(join(folder, name)) }));
}

/**
 * Writes files so that each is either as before or complete: to a name beside it, onto the disk, then renamed.
 * Nothing is renamed before everything is written.
 * @throws the system's error when the folder cannot be written; what was there stays
 */
export function writeAtomically(folder: string, files: FileContent[]): void {
  mkdirSync(folder, { recursive: true });
  const written: [temporary: string, final: string][] = [];
  try {
    for (const { name, bytes } of files) {
      const final = join(folder, name);
      const temporary = join(dirname(final), `.${basename(final)}.${process.pid}.partial`);
      mkdirSync(dirname(final), { recursive: true });
      written.push([temporary, final]);
      const handle = openSync(temporary, 'w');
      try {
        writeFileSync(handle, bytes);
        fsyncSync(handle);
      } finally {
        closeSync(handle);
      }
    }
    for (const [, final] of written) refuseFolder(final);
    for (const [temporary, final] of written) renameSync(temporary, final);
  } finally {
    for (const [temporary] of written) rmSync(temporary, { force: true });
  }
}

/** Names of files that stand in a folder already. */
export function alreadyIn(folder: string, files: FileContent[]): string[] {
  return files.map(({ name }) => name).filter((name) => existsSync(join(folder, name)));
}

/** @throws when a folder stands where the file should go */
function refuseFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) throw new Error(`${path} is a folder`);
}
