import type { Command } from 'commander';
import type { ArchiveView } from '../app/records.js';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { templateTexts } from './files.js';
import { startProgress } from './progress.js';
import { moment, today } from './records-clock.js';
import type { Shell } from './shell.js';

interface RecordsOptions {
  rebuild?: true;
  log?: string;
  on?: string;
  date?: string;
  by?: string;
  note?: string;
}

/** `records <folder>`: what is filed, whether it is sound, and what was measured on the day. */
export function addRecords(program: Command, shell: Shell): void {
  program
    .command('records')
    .description('list and check the records of an archive; log what was measured on the day')
    .argument('<folder>', 'archive that decide files into')
    .argument('[quantity=value...]', 'with --log: what was measured')
    .option('--log <record>', 'keep measurements beside this record, predicted against measured')
    .option('--on <candidate>', 'with --log: the drive in use; the one adopted or kept when left out')
    .option('--date <date>', 'with --log: day of the measurement; today when left out')
    .option('--by <name>', 'with --log: who measured')
    .option('--note <text>', 'with --log: anything worth keeping')
    .option('--rebuild', 'make the ledger anew from the records')
    .option(...jsonFlag)
    .addHelpText(
      'after',
      '\nExample:  holdwright records my-records --log 2026-03-14-adopt-worm-driver "runtime=95 min"',
    )
    .action((folder: string, typed: string[], options: RecordsOptions) =>
      options.log === undefined && typed.length === 0
        ? list(folder, options, shell)
        : log(folder, typed, options, shell),
    );
}

async function list(folder: string, options: RecordsOptions, shell: Shell): Promise<void> {
  const { viewArchive } = await import('../app/records.js');
  const { recordsData, recordsText } = await import('../app/records-text.js');
  const { disk } = await import('../archive/store.js');
  const view: ArchiveView | null = viewArchive(disk, folder, moment(shell), options.rebuild === true);
  if (view === null) {
    const place = { file: folder, line: null, column: null };
    shell.tell([issueAt(place, say.missingFolder('holdwright decide makes one'))]);
    return shell.end(exitCodes.inputErrors);
  }
  shell.tell(view.issues);
  const { archive } = view;
  shell.answer(
    () => recordsText(archive, shell.terminal.width, today(shell)),
    () => recordsData(archive),
  );
  if (view.isStuck) return shell.end(exitCodes.cannotWrite);
  if (archive.issues.some(({ severity }) => severity === 'error')) shell.end(exitCodes.inputErrors);
}

async function log(
  folder: string,
  typed: string[],
  { log: record, on, date, by, note, rebuild }: RecordsOptions,
  shell: Shell,
): Promise<void> {
  if (record === undefined || rebuild) {
    const wrong = rebuild ? '--log and --rebuild do not go together' : 'measurements need --log <record>';
    shell.tell([issueAt({ file: '--log', line: null, column: null }, say.flagsDisagree(wrong))]);
    return shell.end(exitCodes.wrongUsage);
  }
  await shell.helpers.call();
  const { threadsOf } = await import('../app/thread-pool.js');
  const { logDay } = await import('../app/records-log.js');
  const { loggedData, loggedText } = await import('../app/records-log-text.js');
  const { disk } = await import('../archive/store.js');
  const progress = startProgress(shell.terminal);
  const request = {
    archive: folder,
    record,
    typed,
    on: on ?? null,
    date: date ?? today(shell),
    by: by ?? '',
    note: note ?? '',
    templates: templateTexts(),
    version: shell.version,
    now: moment(shell),
    progress: progress.step,
    threads: threadsOf(shell.helpers.called()),
  };
  const result = logDay(disk, request);
  progress.end();
  shell.helpers.dismiss();
  shell.tell(result.issues);
  if (!result.ok) return shell.end(exitCodes.inputErrors);
  const { value } = result;
  if (value.log === null) return shell.end(stopCodes[value.why]);
  shell.answer(
    () => loggedText(value, shell.terminal.width),
    () => loggedData(value),
  );
}

const stopCodes = {
  usage: exitCodes.wrongUsage,
  input: exitCodes.inputErrors,
  write: exitCodes.cannotWrite,
} as const;
