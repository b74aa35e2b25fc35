import { basename, dirname } from 'node:path';
import { type Command, Option } from 'commander';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import type { Reading } from './reading.js';
import { type Beside, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';
import { writeOut } from './write-out.js';

interface RankOptions extends Beside {
  json?: true;
  csv?: true;
  out?: string;
  decimal?: 'point' | 'comma';
  set: string[];
}

/** `rank <study>`: the ranking on the terminal, for a spreadsheet, or everything as JSON. */
export function addRank(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('rank')))
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
  // What only the report shows takes its time; a person who asks for the ranking waits for less.
  const assess = (reading: Reading) => assessStudy(reading, json ? 'report' : 'ranking');
  const worked = await withStudy(shell, folder, set, assess, options);
  if ('stop' in worked) return shell.end(worked.stop);
  const { value: assessment, reading } = worked;
  if (csv) {
    const table = await rankingCsv(assessment, decimal);
    if (out === undefined) shell.terminal.result(table);
    else await writeTable(table, out, shell);
  } else {
    shell.answer(
      () => rankingText(assessment, reading, shell.terminal),
      (issues) => resultsText(assessment, issues),
    );
  }
}

/** Puts the table into its file, complete or not at all. */
async function writeTable(table: string, out: string, shell: Shell): Promise<void> {
  const files = [{ name: basename(out), bytes: new TextEncoder().encode(table) }];
  if (await writeOut(shell, dirname(out), { files }, 'the table')) shell.terminal.result(`Written: ${out}`);
}

function collected(value: string, before: string[]): string[] {
  return [...before, value];
}
