import type { Command } from 'commander';
import { jsonFlag } from './answer.js';
import type { Reading } from './reading.js';
import { type Beside, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';

/** `measure <study>`: the sheet to measure by, with blanks to fill in. */
export function addMeasure(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('measure')))
    .description('print the measuring sheet: what, with which instrument, how exactly, worth most first')
    .argument('<study>', 'folder with the CSV files')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright measure data-demo/lantern-parade')
    .action((folder: string, options: Beside) => measure(folder, options, shell));
}

async function measure(folder: string, options: Beside, shell: Shell): Promise<void> {
  const { assessStudy } = await import('../app/study.js');
  const { measureData, measureText } = await import('../app/measure-text.js');
  const assess = (reading: Reading) => assessStudy(reading, 'ranking');
  const worked = await withStudy(shell, folder, [], assess, options);
  if ('stop' in worked) return shell.end(worked.stop);
  shell.answer(
    () => measureText(worked.value, shell.terminal.width, worked.reading.units),
    () => measureData(worked.value),
  );
}
