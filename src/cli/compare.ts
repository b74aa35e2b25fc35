import type { Command } from 'commander';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { templateTexts } from './files.js';
import { startProgress } from './progress.js';
import type { Shell } from './shell.js';

interface CompareOptions {
  candidate?: string;
}

/** `compare <record> <record>`: which inputs changed, and how much of the change in the results each explains. */
export function addCompare(program: Command, shell: Shell): void {
  program
    .command('compare')
    .description('compare two records: which inputs changed, and what each did to the results')
    .argument('<earlier>', 'folder of a record')
    .argument('<later>', 'folder of another')
    .option('--candidate <id>', 'whose figures to tell; the later choice when left out')
    .option(...jsonFlag)
    .addHelpText(
      'after',
      '\nExample:  holdwright compare my-records/2026-03-14-adopt-worm-driver my-records/2026-05-02-keep-servo-now',
    )
    .action((earlier: string, later: string, options: CompareOptions) =>
      compare([earlier, later], options, shell),
    );
}

async function compare(
  records: [string, string],
  { candidate }: CompareOptions,
  shell: Shell,
): Promise<void> {
  const { compareRecords } = await import('../app/compare.js');
  const { comparisonData, comparisonText } = await import('../app/compare-text.js');
  const { threadsOf } = await import('../app/thread-pool.js');
  const { disk } = await import('../archive/store.js');
  const progress = startProgress(shell.terminal);
  const common = {
    templates: templateTexts(),
    version: shell.version,
    progress: progress.step,
    threads: threadsOf(shell.helpers.called()),
  };
  const result = compareRecords({ records, candidate: candidate ?? null, ...common }, disk);
  progress.end();
  shell.helpers.dismiss();
  shell.tell(result.issues);
  if (!result.ok) return shell.end(exitCodes.inputErrors);
  const { comparison } = result.value;
  if (comparison === null) return shell.end(exitCodes.wrongUsage);
  shell.answer(
    () => comparisonText(comparison, shell.terminal.width),
    () => comparisonData(comparison),
  );
}
