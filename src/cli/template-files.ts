import {
  closeSync,
  constants,
  type Dirent,
  fstatSync,
  openSync,
  readdirSync,
  readFileSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Issue } from '../problem/issue.js';
import * as say from '../problem/template-messages.js';
import { issueAt, type Trouble } from '../problem/trouble.js';
import type { FileContent } from './files.js';

/** Largest template that is read; the largest that ships has a fiftieth of it. */
const largestBytes = 1024 * 1024;

/** Most files and folders, and most folders in each other. */
const mostEntries = 200;
const mostLevels = 3;

/**
 * All files of the user's folder of templates, named with `/`, and what is wrong with the folder. Links are not
 * followed: what they lead to is no business of a template.
 */
export function templateFiles(folder: string): { files: FileContent[]; issues: Issue[] } {
  const files: FileContent[] = [];
  const issues: Issue[] = [];
  const note = (name: string, trouble: Trouble): void => {
    const file = name === '' ? folder : `${folder}/${name}`;
    issues.push(issueAt({ file, line: null, column: null }, trouble));
  };
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) {
    note('', say.noTemplateFolder());
    return { files, issues };
  }
  const entries = entriesBelow(folder, '', mostLevels);
  if (entries.length > mostEntries) {
    note('', say.tooManyTemplates(mostEntries));
    return { files, issues };
  }
  for (const { name, kind } of entries) {
    if (kind !== 'file') note(name, say.notAPlainFile(kind));
    else {
      try {
        const bytes = plainBytes(join(folder, name));
        if (typeof bytes === 'number') note(name, say.templateTooLarge(bytes, largestBytes));
        else files.push({ name, bytes });
      } catch (error) {
        note(name, say.templateUnreadable((error as Error).message));
      }
    }
  }
  return { files, issues };
}

interface Entry {
  name: string;
  kind: 'file' | 'a link' | 'neither file nor folder' | 'a folder this deep';
}

/** Everything below a folder in the order of names, without hidden files; stops soon after there are too many. */
function entriesBelow(folder: string, prefix: string, levels: number): Entry[] {
  const found: Entry[] = [];
  const inside = readdirSync(join(folder, prefix), { withFileTypes: true });
  for (const entry of inside.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (entry.name.startsWith('.') || found.length > mostEntries) continue;
    const name = prefix + entry.name;
    if (entry.isDirectory() && levels > 1) found.push(...entriesBelow(folder, `${name}/`, levels - 1));
    else found.push({ name, kind: kindOf(entry) });
  }
  return found;
}

function kindOf(entry: Dirent): Entry['kind'] {
  if (entry.isSymbolicLink()) return 'a link';
  if (entry.isDirectory()) return 'a folder this deep';
  return entry.isFile() ? 'file' : 'neither file nor folder';
}

/** What a file holds, or how large it is when that is too much; a link put in its place meanwhile is not followed. */
function plainBytes(path: string): Uint8Array | number {
  const handle = openSync(path, constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK);
  try {
    const { size } = fstatSync(handle);
    return size > largestBytes ? size : new Uint8Array(readFileSync(handle));
  } finally {
    closeSync(handle);
  }
}
