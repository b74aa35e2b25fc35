import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bytesOf } from '../../src/archive/digest.js';
import type { FileOperations } from '../../src/archive/file-operations.js';
import { writeTogether } from '../../src/cli/write-together.js';
import { type Fault, faulty, type Step } from '../archive/faulty.js';
import { quickDisk } from '../archive/fixture.js';
import { emptyFolder } from './program.js';

/** The machine after it was switched on again: another process, the old one gone. */
const restarted: FileOperations = {
  ...quickDisk,
  writer: { ...quickDisk.writer, process: '999999999' },
  isRunning: () => false,
};

/** Files of one age: each says which it is, at both ends, so that half a file shows. */
const aged = (age: string, names: readonly string[]) =>
  names.map((name) => ({ name, bytes: bytesOf(`${age} ${'line\n'.repeat(2000)}${age}`) }));

/** What stands under a name: its age; `half` for anything that is not whole; `none`. */
function ageOf(folder: string, name: string): string {
  const path = join(folder, name);
  if (!existsSync(path)) return 'none';
  const text = readFileSync(path, 'utf8');
  const age = text.slice(0, 3);
  return text === `${age} ${'line\n'.repeat(2000)}${age}` ? age : 'half';
}

/** A folder with a file of somebody else and, where there is an earlier writing, its files. */
function folderWith(names: readonly string[], isNew: boolean): string {
  const folder = join(emptyFolder(), 'deep', 'report');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'notes.txt'), 'mine');
  if (!isNew) writeTogether(quickDisk, folder, aged('old', names));
  return folder;
}

const hidden = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('.'));

/** Every step of a writing, with every way in which it can fail. */
function everyFault(names: readonly string[], isNew: boolean, last: boolean): (Fault & { step: Step })[] {
  const { files, done } = faulty(quickDisk, null);
  writeTogether(files, folderWith(names, isNew), aged('new', names));
  return done.flatMap(({ step }, index) => {
    const ways: Fault['how'][] = step === 'write' ? ['refused', 'half', 'done'] : ['refused', 'done'];
    return ways.map((how) => ({ at: index + 1, how, last, step }));
  });
}

/** Lets one step fail. */
function failing(folder: string, names: readonly string[], fault: Fault): { error: string } {
  try {
    writeTogether(faulty(quickDisk, fault).files, folder, aged('new', names));
    return { error: '' };
  } catch (error) {
    return { error: (error as Error).message };
  }
}

const writings: [what: string, names: string[], isNew: boolean][] = [
  ['a report in a new folder', ['report.pdf', 'results.json'], true],
  ['a report over an earlier one', ['report.pdf', 'results.json'], false],
  ['three files over earlier ones', ['report.html', 'results.json', 'results.csv'], false],
  ['a sheet over an earlier one', ['safety-sheet.pdf'], false],
];

describe.each(writings)('one step that fails while somebody writes %s', (_, names, isNew) => {
  const [first = ''] = names;
  const before = isNew ? 'none' : 'old';
  const ages = (folder: string) => names.map((name) => ageOf(folder, name));
  const all = (age: string) => names.map(() => age);

  it('there are writes, syncs and renames among the steps', () => {
    const steps = everyFault(names, isNew, false)
      .filter(({ how }) => how === 'refused')
      .map(({ step }) => step);
    const count = (wanted: Step) => steps.filter((step) => step === wanted).length;
    const asides = isNew ? 0 : names.length - 1;
    expect([count('write'), count('sync'), count('close')]).toEqual(Array(3).fill(names.length));
    expect(count('rename')).toBe(names.length + asides);
    expect(count('syncFolder')).toBe(names.length + (asides > 0 ? 1 : 0));
  });

  it.each(everyFault(names, isNew, false))(
    '$step, step $at, $how: all new, all as before, or a message about what is missing',
    (fault) => {
      const folder = folderWith(names, isNew);
      const { error } = failing(folder, names, fault);
      const found = ages(folder);
      if (error === '') expect(found).toEqual(all('new'));
      else if (!error.includes('is missing')) expect(found).toEqual(all(before));
      else {
        expect(found[0]).toBe('new');
        names.forEach((name, index) => {
          expect(found[index], name).toBe(error.split('; ')[2]!.includes(name) ? 'none' : 'new');
        });
      }
      expect(readFileSync(join(folder, 'notes.txt'), 'utf8')).toBe('mine');
      expect(hidden(folder).length).toBeLessThanOrEqual(fault.step === 'remove' ? 1 : 0);
    },
  );

  it.each(everyFault(names, isNew, true))(
    'everything from $step, step $at, $how on: never an old file beside a new one, and the next writing clears up',
    (fault) => {
      const folder = folderWith(names, isNew);
      failing(folder, names, fault);
      const found = ages(folder);
      expect(found).not.toContain('half');
      const there = found.filter((age) => age !== 'none');
      expect(new Set(there).size).toBeLessThanOrEqual(1);
      if (!isNew) expect(found[0], first).not.toBe('none');
      writeTogether(restarted, folder, aged('new', names));
      expect(ages(folder)).toEqual(all('new'));
      expect(readdirSync(folder).sort()).toEqual([...names, 'notes.txt'].sort());
    },
  );
});

describe('a writing that is not confirmed', () => {
  it('is done, and says why', () => {
    const folder = folderWith(['a.pdf'], false);
    const files: FileOperations = {
      ...quickDisk,
      syncFolder() {
        throw new Error('not on this disk');
      },
    };
    expect(writeTogether(files, folder, aged('new', ['a.pdf']))).toBe('not on this disk');
    expect(ageOf(folder, 'a.pdf')).toBe('new');
  });
});

describe('what a stopped process has left', () => {
  it('stays while that process runs, and beside files of other names', () => {
    const folder = folderWith(['a.pdf'], true);
    for (const name of ['.a.pdf.123.partial', '.b.pdf.124.partial', '.a.pdf.note'])
      writeFileSync(join(folder, name), 'x');
    writeTogether({ ...quickDisk, isRunning: () => true }, folder, aged('new', ['a.pdf']));
    expect(hidden(folder)).toHaveLength(3);
    writeTogether(restarted, folder, aged('new', ['a.pdf']));
    expect(hidden(folder)).toEqual(['.a.pdf.note', '.b.pdf.124.partial']);
  });
});
