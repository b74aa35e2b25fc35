import type { Command } from 'commander';
import { jsonFlag } from './answer.js';
import { type Shell, withStudy } from './shell.js';

/** `measure <study>`: the sheet to measure by, with blanks to fill in. */
export function addMeasure(program: Command, shell: Shell): void {
  program
    .command('measure')
    .description('print the measuring sheet: what, with which instrument, how exactly, worth most first')
    .argument('<study>', 'folder with the CSV files')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright measure data-demo/lantern-parade')
    .action((folder: string) => measure(folder, shell));
}

async function measure(folder: string, shell: Shell): Promise<void> {
  const { assessStudy } = await import('../app/study.js');
  const { measureData, measureText } = await import('../app/measure-text.js');
  const worked = await withStudy(shell, folder, [], (reading) => assessStudy(reading, 'ranking'));
  if ('stop' in worked) return shell.end(worked.stop);
  shell.answer(
    () => measureText(worked.value, shell.terminal.width),
    () => measureData(worked.value),
  );
}
