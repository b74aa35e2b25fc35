import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const built = join(root, 'dist/program/main.js');

/** The demo that the commands of README.md name. */
export const demo = join(root, 'data-demo/lantern-parade');

export interface Ended {
  code: number | null;
  stdout: string;
  stderr: string;
}

/** Runs the built program as a user would. */
export function holdwright(args: string[], options: { cwd?: string; env?: NodeJS.ProcessEnv } = {}): Ended {
  if (!existsSync(built))
    throw new Error('the program is not built: npm run build comes first (npm test does it)');
  const { status, stdout, stderr } = spawnSync(process.execPath, [built, ...args], {
    cwd: options.cwd ?? root,
    env: { PATH: process.env.PATH, ...options.env },
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { code: status, stdout, stderr };
}

/** An empty folder that the system cleans up. */
export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'holdwright-'));

/** A folder with the demos in it, as seen from the project's root. */
export function projectCopy(): string {
  const folder = emptyFolder();
  cpSync(join(root, 'data-demo'), join(folder, 'data-demo'), { recursive: true });
  return folder;
}

/** A copy of the demo with one file changed. */
export function changedDemo(name: string, change: (text: string) => string): string {
  const folder = join(emptyFolder(), 'study');
  cpSync(demo, folder, { recursive: true });
  const path = join(folder, name);
  const before = readFileSync(path, 'utf8');
  const after = change(before);
  if (after === before) throw new Error(`the change leaves ${name} as it was`);
  writeFileSync(path, after);
  return folder;
}

/** Names in a folder; empty when there is none. */
export const namesIn = (folder: string): string[] => (existsSync(folder) ? readdirSync(folder).sort() : []);
