import { type Command, Option } from 'commander';
import { exitCodes } from './exit-codes.js';
import { alreadyIn, type FileContent, templateTexts, writeAtomically } from './files.js';
import type { Shell } from './shell.js';

interface NewOptions {
  drive?: string[];
  wording?: true;
}

/** `new <folder>`: a study to fill in, one comment above each item saying how to measure it; or wording to edit. */
export function addNew(program: Command, shell: Shell): void {
  const wording = new Option('--wording', 'a copy of the wording and charts of the report, for --templates');
  program
    .command('new')
    .description('start a study: files to fill in, with a line on how to measure each item')
    .argument('<folder>', 'folder to make')
    .addOption(new Option('--drive <type...>', 'drive types to compare; all when left out'))
    .addOption(wording.conflicts('drive'))
    .addHelpText(
      'after',
      '\nExample:  holdwright new my-study --drive position-servo worm-gearmotor' +
        '\nExample:  holdwright new my-wording --wording',
    )
    .action((folder: string, options: NewOptions) => begin(folder, options, shell));
}

async function begin(folder: string, { drive, wording }: NewOptions, shell: Shell): Promise<void> {
  const { starter, wordingCopy } = await import('../app/starter.js');
  if (wording) {
    const files = wordingCopy(templateTexts());
    const next = `Edit what you like and delete the rest, then:  holdwright report STUDY --out REPORT --templates ${folder}`;
    return write(folder, files, next, shell);
  }
  const started = starter(drive ?? []);
  if ('unknown' in started) {
    const { unknown, known } = started;
    shell.terminal.talk(`error: there is no drive type ${unknown.join(', ')}\n  known: ${known.join(', ')}`);
    return shell.end(exitCodes.wrongUsage);
  }
  write(folder, started.files, `Fill in the values, then:  holdwright check ${folder}`, shell);
}

/** Writes the files unless one of them is there already, and says what to do with them. */
function write(folder: string, files: FileContent[], next: string, shell: Shell): void {
  const kept = alreadyIn(folder, files);
  if (kept.length > 0) {
    shell.terminal.talk(`error: ${folder} already has ${kept.join(', ')}; nothing was written`);
    shell.end(exitCodes.cannotWrite);
    return;
  }
  try {
    writeAtomically(folder, files);
  } catch (error) {
    shell.terminal.talk(`error: ${folder} cannot be written: ${(error as Error).message}`);
    shell.end(exitCodes.cannotWrite);
    return;
  }
  const names = files.map(({ name }) => `  ${name}`).join('\n');
  shell.terminal.result(`${folder} has now\n${names}\n${next}`);
}
