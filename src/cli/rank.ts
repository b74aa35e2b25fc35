import { basename, dirname } from 'node:path';
import { type Command, Option } from 'commander';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import { systemReason } from './file-names.js';
import { writeAtomically } from './files.js';
import { type Shell, withStudy } from './shell.js';

interface RankOptions {
  json?: true;
  csv?: true;
  out?: string;
  decimal?: 'point' | 'comma';
  set: string[];
}

/** `rank <study>`: the ranking on the terminal, for a spreadsheet, or everything as JSON. */
export function addRank(program: Command, shell: Shell): void {
  program
    .command('rank')
    .description('rank the candidates of a study')
    .argument('<study>', 'folder with the CSV files')
    .option(...jsonFlag)
    .addOption(
      new Option('--csv', 'the ranking with every outcome as a table for a spreadsheet').conflicts('json'),
    )
    .option('--out <file>', 'with --csv: file to write; standard output when left out')
    .addOption(
      new Option(
        '--decimal <mark>',
        'with --csv: decimal mark; with comma, semicolons separate the cells',
      ).choices(['point', 'comma']),
    )
    .option('--set <item=value>', 'what happens if: replace a value; may be given again', collected, [])
    .addHelpText(
      'after',
      '\nExample:  holdwright rank data-demo/lantern-parade --set "feature.mass=700 g" --set pack.carried=1',
    )
    .action((folder: string, options: RankOptions) => rank(folder, options, shell));
}

async function rank(folder: string, options: RankOptions, shell: Shell): Promise<void> {
  const { csv, out, decimal, json, set } = options;
  if (!csv && (out ?? decimal) !== undefined) {
    const place = { file: out === undefined ? '--decimal' : '--out', line: null, column: null };
    shell.tell([issueAt(place, say.flagNeeds('--csv'))]);
    return shell.end(exitCodes.wrongUsage);
  }
  const { assessStudy, rankingCsv, rankingText, resultsText } = await import('../app/study.js');
  const worked = await withStudy(shell, folder, set, (reading) =>
    // What only the report shows takes its time; a person who asks for the ranking waits for less.
    assessStudy(reading, json ? 'report' : 'ranking'),
  );
  if ('stop' in worked) return shell.end(worked.stop);
  const { value: assessment, reading } = worked;
  if (csv) {
    const table = await rankingCsv(assessment, decimal);
    if (out === undefined) shell.terminal.result(table);
    else writeTable(table, out, shell);
  } else {
    shell.answer(
      () => rankingText(assessment, reading.templates, shell.terminal),
      (issues) => resultsText(assessment, issues),
    );
  }
}

/** Puts the table into its file, complete or not at all. */
function writeTable(table: string, out: string, shell: Shell): void {
  try {
    writeAtomically(dirname(out), [{ name: basename(out), bytes: new TextEncoder().encode(table) }]);
    shell.terminal.result(`Written: ${out}`);
  } catch (error) {
    const place = { file: out, line: null, column: null };
    shell.tell([issueAt(place, say.unwritable(systemReason(error), 'name another file with --out'))]);
    shell.end(exitCodes.cannotWrite);
  }
}

function collected(value: string, before: string[]): string[] {
  return [...before, value];
}
