import { basename, dirname, join } from 'node:path';
import { type Command, Option } from 'commander';
import * as say from '../problem/command-messages.js';
import { nearestName } from '../problem/nearest-name.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { type FileContent, namesIn, templateTexts } from './files.js';
import type { Shell } from './shell.js';
import { writeOut } from './write-out.js';

interface NewOptions {
  drive?: string[];
  wording?: true;
  fields?: true;
  allColumns?: true;
}

/**
 * `new <folder>`: a study to fill in, one comment above each item saying how to measure it; wording to edit; or the
 * page of all fields.
 */
export function addNew(program: Command, shell: Shell): void {
  const wording = new Option('--wording', 'a copy of the wording and charts of the report, for --templates');
  const fields = new Option(
    '--fields',
    'a page that tells every file, column and item, and what a blank means',
  );
  program
    .command('new')
    .description('start a study: files to fill in, with a line on how to measure each item')
    .argument('<folder>', 'folder to make')
    .addOption(new Option('--drive <type...>', 'drive types to compare; all when left out'))
    .addOption(wording.conflicts(['drive', 'allColumns']))
    .addOption(fields.conflicts(['drive', 'wording', 'allColumns']))
    .option('--all-columns', 'every column that the drive types have, also what few studies need')
    .option(...jsonFlag)
    .addHelpText(
      'after',
      '\nExample:  holdwright new my-study --drive position-servo worm-gearmotor' +
        '\nExample:  holdwright new my-wording --wording' +
        '\nExample:  holdwright new my-study --fields',
    )
    .action((folder: string, options: NewOptions) => begin(folder, options, shell));
}

async function begin(
  folder: string,
  { drive, wording, fields, allColumns }: NewOptions,
  shell: Shell,
): Promise<void> {
  const { fieldsPage, starter, wordingCopy } = await import('../app/starter.js');
  if (fields) return write(folder, [fieldsPage()], `Start with:  holdwright new ${folder}`, shell);
  if (wording) {
    const files = wordingCopy(templateTexts());
    const next = `Edit what you like and delete the rest, then:  holdwright report STUDY --out REPORT --templates ${folder}`;
    return write(folder, files, next, shell);
  }
  const started = starter(drive ?? [], allColumns);
  if ('unknown' in started) {
    const { unknown, known } = started;
    const place = { file: '--drive', line: null, column: null };
    shell.tell(
      unknown.map((word) => issueAt(place, say.unknownDriveType(word, known, nearestName(word, known)))),
    );
    return shell.end(exitCodes.wrongUsage);
  }
  await write(folder, started.files, `Fill in the values, then:  holdwright check ${folder}`, shell);
}

/** Writes the files unless one of them is there already, and says what to do with them. */
async function write(folder: string, files: FileContent[], next: string, shell: Shell): Promise<void> {
  const place = { file: folder, line: null, column: null };
  const kept = files.map(({ name }) => name).filter((name) => isThere(folder, name));
  if (kept.length > 0) {
    shell.tell([issueAt(place, say.wouldOverwrite(kept))]);
    return shell.end(exitCodes.cannotWrite);
  }
  if (!(await writeOut(shell, folder, { files }, 'the folder'))) return;
  const names = files.map(({ name }) => name);
  shell.answer(
    () => `${folder} has now\n${names.map((name) => `  ${name}\n`).join('')}${next}`,
    () => ({ folder, files: names }),
  );
}

/** Whether a file of this name is there; many systems take `Study.csv` and `study.csv` for one. */
function isThere(folder: string, name: string): boolean {
  const there = namesIn(join(folder, dirname(name))).map((found) => found.toLowerCase());
  return there.includes(basename(name).toLowerCase());
}
