import type { Command } from 'commander';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import type { Reading } from './reading.js';
import { type Beside, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';

interface CheckOptions extends Beside {
  requirePass?: true;
}

/** `check <study>`: what the files say, what is missing, what to measure first. */
export function addCheck(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('check')))
    .description('read a study, tell what is wrong, assumed or worth measuring')
    .argument('<study>', 'folder with the CSV files')
    .option('--require-pass', 'exit with 5 when no candidate passes every limit')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright check data-demo/lantern-parade')
    .action((folder: string, options: CheckOptions) => check(folder, options, shell));
}

async function check(folder: string, options: CheckOptions, shell: Shell): Promise<void> {
  const { assessStudy, checkWording } = await import('../app/study.js');
  const { checkText } = await import('../app/check-text.js');
  const { checkData } = await import('../app/check-data.js');
  const assess = async (reading: Reading) => {
    const assessed = assessStudy(reading);
    // Faults in wording of one's own show only when a report is made with it.
    if (assessed.ok && options.templates !== undefined) {
      await checkWording(assessed.value, reading);
    }
    return assessed;
  };
  const worked = await withStudy(shell, folder, [], assess, options);
  if ('stop' in worked) return shell.end(worked.stop);
  shell.answer(
    () => checkText(worked.value, shell.terminal.width, worked.reading.units),
    () => checkData(worked.value),
  );
  if (options.requirePass && worked.value.leader === null) shell.end(exitCodes.nonePasses);
}
