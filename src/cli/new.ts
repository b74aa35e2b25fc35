import { type Command, Option } from 'commander';
import * as say from '../problem/command-messages.js';
import { nearestName } from '../problem/nearest-name.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { systemReason } from './file-names.js';
import { namesIn, writeAtomically } from './files.js';
import type { Shell } from './shell.js';

interface NewOptions {
  drive?: string[];
}

/** `new <folder>`: a study to fill in, one comment above each item saying how to measure it. */
export function addNew(program: Command, shell: Shell): void {
  program
    .command('new')
    .description('start a study: files to fill in, with a line on how to measure each item')
    .argument('<folder>', 'folder to make')
    .addOption(new Option('--drive <type...>', 'drive types to compare; all when left out'))
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright new my-study --drive position-servo worm-gearmotor')
    .action((folder: string, options: NewOptions) => begin(folder, options, shell));
}

async function begin(folder: string, { drive }: NewOptions, shell: Shell): Promise<void> {
  const { starter } = await import('../app/starter.js');
  const started = starter(drive ?? []);
  if ('unknown' in started) {
    const { unknown, known } = started;
    const place = { file: '--drive', line: null, column: null };
    shell.tell(
      unknown.map((word) => issueAt(place, say.unknownDriveType(word, known, nearestName(word, known)))),
    );
    return shell.end(exitCodes.wrongUsage);
  }
  const { files } = started;
  const place = { file: folder, line: null, column: null };
  // Many systems take `Study.csv` and `study.csv` for one file.
  const there = namesIn(folder).map((name) => name.toLowerCase());
  const kept = files.map(({ name }) => name).filter((name) => there.includes(name.toLowerCase()));
  if (kept.length > 0) {
    shell.tell([issueAt(place, say.wouldOverwrite(kept))]);
    return shell.end(exitCodes.cannotWrite);
  }
  try {
    writeAtomically(folder, files);
  } catch (error) {
    shell.tell([issueAt(place, say.unwritable(systemReason(error), 'name another folder'))]);
    return shell.end(exitCodes.cannotWrite);
  }
  const names = files.map(({ name }) => name);
  shell.answer(
    () =>
      `${folder} has now\n${names.map((name) => `  ${name}\n`).join('')}Fill in the values, then:  holdwright check ${folder}`,
    () => ({ folder, files: names }),
  );
}
