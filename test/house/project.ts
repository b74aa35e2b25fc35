import { execFileSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Root of the project, with a separator at its end. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Files of the project as they stand, tracked or about to be; paths from the root. */
export const projectFiles: string[] = listFiles();

/** Text of a file of the project. */
export const textOf = (path: string): string => readFileSync(join(root, path), 'utf8');

/** Sources of one folder under `src/`, or of all. */
export const sources = (folder = ''): string[] =>
  projectFiles.filter((path) => path.startsWith(`src/${folder}`) && path.endsWith('.ts'));

/** Folder under `src/` that a source belongs to. */
export const layerOf = (path: string): string => path.split('/')[1] ?? '';

function listFiles(): string[] {
  const listed = execFileSync('git', ['ls-files', '-co', '--exclude-standard', '-z'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  return [...new Set(listed.split('\0'))].filter((path) => path !== '' && isFile(path)).sort();
}

function isFile(path: string): boolean {
  return statSync(join(root, path), { throwIfNoEntry: false })?.isFile() === true;
}
