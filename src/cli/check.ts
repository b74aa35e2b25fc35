import type { Command } from 'commander';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { type Shell, withStudy } from './shell.js';

interface CheckOptions {
  requirePass?: true;
}

/** `check <study>`: what the files say, what is missing, what to measure first. */
export function addCheck(program: Command, shell: Shell): void {
  program
    .command('check')
    .description('read a study, tell what is wrong, assumed or worth measuring')
    .argument('<study>', 'folder with the CSV files')
    .option('--require-pass', 'exit with 5 when no candidate passes every limit')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright check data-demo/lantern-parade')
    .action((folder: string, options: CheckOptions) => check(folder, options, shell));
}

async function check(folder: string, options: CheckOptions, shell: Shell): Promise<void> {
  const { assessStudy } = await import('../app/study.js');
  const { checkText } = await import('../app/check-text.js');
  const { checkData } = await import('../app/check-data.js');
  const worked = await withStudy(shell, folder, [], assessStudy);
  if ('stop' in worked) return shell.end(worked.stop);
  shell.answer(
    () => checkText(worked.value, shell.terminal.width),
    () => checkData(worked.value),
  );
  if (options.requirePass && worked.value.leader === null) shell.end(exitCodes.nonePasses);
}
