import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
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
