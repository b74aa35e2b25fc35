import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as say from '../problem/command-messages.js';
import * as sayFile from '../problem/file-messages.js';
import type { Issue, Result } from '../problem/issue.js';
import { issueAt, type Trouble } from '../problem/trouble.js';
import { systemReason } from './file-names.js';

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

/** The CSV files of a study folder in name order, or why they cannot be read. */
export function studyFiles(folder: string): Result<FileContent[]> {
  const issues: Issue[] = [];
  const tell = (file: string, trouble: Trouble) =>
    void issues.push(issueAt({ file, line: null, column: null }, trouble));
  const files = tableNames(folder, (trouble, file = folder) => tell(file, trouble)).flatMap(
    (name): FileContent[] => {
      try {
        return [{ name, bytes: readFileSync(join(folder, name)) }];
      } catch (error) {
        tell(name, say.unreadable(systemReason(error)));
        return [];
      }
    },
  );
  const isStopped = issues.some(({ severity }) => severity === 'error');
  return isStopped ? { ok: false, issues } : { ok: true, value: files, issues };
}

/** Names of everything in a folder; none where there is no folder. */
export function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** A workbook beside the tables: what a spreadsheet program saves when nobody says CSV. */
const isWorkbook = (name: string): boolean => /\.(?:xlsx?|xlsm|ods|numbers)$/i.test(name);

/** Names of the CSV files in a folder; none, and told why, where there is none. */
function tableNames(folder: string, tell: (trouble: Trouble, file?: string) => void): string[] {
  const startOne = `holdwright new ${folder} starts a study there`;
  try {
    const entries = readdirSync(folder, { withFileTypes: true });
    const names = entries.filter((entry) => !entry.isDirectory()).map((entry) => entry.name);
    const tables = names.filter((name) => name.toLowerCase().endsWith('.csv') && !name.startsWith('.'));
    for (const name of names) if (isWorkbook(name)) tell(sayFile.workbook(name), name);
    if (tables.length === 0) tell(say.noTables(startOne));
    return tables.sort();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') tell(say.missingFolder(startOne));
    else if (code === 'ENOTDIR')
      tell(say.fileForFolder('name the folder that holds the CSV files of the study'));
    else tell(say.unreadable(systemReason(error)));
    return [];
  }
}
