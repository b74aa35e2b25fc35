import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { StudyRequest } from '../../src/app/study.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Files of a demo study, as the command line hands them over. */
export const demoFiles = (name: string): StudyRequest['files'] => {
  const folder = join(root, 'data-demo', name);
  return readdirSync(folder)
    .filter((file) => file.endsWith('.csv'))
    .sort()
    .map((file) => ({ name: file, bytes: readFileSync(join(folder, file)) }));
};

/** One file of a demo study, whatever its name. */
export const demoFile = (name: string, file: string): Uint8Array =>
  readFileSync(join(root, 'data-demo', name, file));

/** A request without templates: the assumptions are those that ship. */
export const request = (files: StudyRequest['files'], changes: string[] = []): StudyRequest => ({
  files,
  templates: {},
  changes,
  version: '0.0.0',
  progress() {},
});
