import { type Command, Option } from 'commander';
import { exitCodes } from './exit-codes.js';
import { studyFiles } from './files.js';
import type { Shell } from './shell.js';
import { writeOut } from './write-out.js';

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
    .addHelpText('after', '\nExample:  holdwright new my-study --drive position-servo worm-gearmotor')
    .action((folder: string, options: NewOptions) => begin(folder, options, shell));
}

async function begin(folder: string, { drive }: NewOptions, shell: Shell): Promise<void> {
  const { starter } = await import('../app/starter.js');
  const started = starter(drive ?? []);
  if ('unknown' in started) {
    const { unknown, known } = started;
    shell.terminal.talk(`error: there is no drive type ${unknown.join(', ')}\n  known: ${known.join(', ')}`);
    return shell.end(exitCodes.wrongUsage);
  }
  const { files } = started;
  const there = studyFiles(folder)?.map(({ name }) => name) ?? [];
  const kept = files.filter(({ name }) => there.includes(name));
  if (kept.length > 0) {
    shell.terminal.talk(
      `error: ${folder} already has ${kept.map(({ name }) => name).join(', ')}; nothing was written`,
    );
    return shell.end(exitCodes.cannotWrite);
  }
  if (!(await writeOut(shell, folder, { files }, 'the study'))) return;
  const names = files.map(({ name }) => `  ${name}`).join('\n');
  shell.terminal.result(`${folder} has now\n${names}\nFill in the values, then:  holdwright check ${folder}`);
}
