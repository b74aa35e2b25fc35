import type { Command } from 'commander';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { studyFiles, templateTexts } from './files.js';
import { startProgress } from './progress.js';
import { today } from './records-clock.js';
import type { Shell } from './shell.js';

interface ReopenOptions {
  study?: string;
}

/** `reopen <record>`: computes a record anew and says what moved since. */
export function addReopen(program: Command, shell: Shell): void {
  program
    .command('reopen')
    .description('compute a record anew and say what moved: inputs, program, results, ranking')
    .argument('<record>', 'folder of the record in its archive')
    .option('--study <folder>', 'hold it against this study as it stands now')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright reopen my-records/2026-03-14-adopt-worm-driver')
    .action((record: string, options: ReopenOptions) => open(record, options, shell));
}

async function open(record: string, { study }: ReopenOptions, shell: Shell): Promise<void> {
  const { reopen } = await import('../app/reopen.js');
  const { reopenedData, reopenedText } = await import('../app/reopen-text.js');
  const { disk } = await import('../archive/store.js');
  const asItStands = study === undefined ? null : studyFiles(study);
  shell.tell(asItStands?.issues ?? []);
  if (asItStands?.ok === false) return shell.end(exitCodes.inputErrors);
  const progress = startProgress(shell.terminal);
  const common = { templates: templateTexts(), version: shell.version, progress: progress.step };
  const result = reopen({ record, files: asItStands?.value ?? null, ...common }, disk);
  progress.end();
  shell.tell(result.issues);
  if (!result.ok) return shell.end(exitCodes.inputErrors);
  shell.answer(
    () => reopenedText(result.value, shell.terminal.width, today(shell)),
    () => reopenedData(result.value),
  );
}
