import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { writeAtomically } from './files.js';
import { type Beside, type Reading, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';

interface ReportOptions extends Beside {
  out: string;
  page: keyof typeof papers;
}

/** Names of paper on the command line, and in the report. */
const papers = { a4: 'A4', letter: 'Letter' } as const;

/** `report <study> --out <folder>`: the PDF and the results, and the ranking on the terminal. */
export function addReport(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('report')))
    .description('write report.pdf and results.json')
    .argument('<study>', 'folder with the CSV files')
    .requiredOption('--out <folder>', 'where the report goes; made when it is not there')
    .addOption(new Option('--page <size>', 'page size').choices(Object.keys(papers)).default('a4'))
    .addHelpText('after', '\nExample:  holdwright report data-demo/lantern-parade --out demo-report')
    .action((folder: string, options: ReportOptions) => report(folder, options, shell));
}

async function report(folder: string, { out, page, ...beside }: ReportOptions, shell: Shell): Promise<void> {
  const { assessStudy, rankingText, reportFiles } = await import('../app/study.js');
  const make = async (reading: Reading) => {
    const assessed = assessStudy(reading);
    if (!assessed.ok) return assessed;
    const date = reportDate(shell.env, assessed.value.study.about.date, shell.now);
    const made = await reportFiles(assessed.value, reading, { page: papers[page], date });
    return { ...assessed, value: { assessment: assessed.value, ...made } };
  };
  const worked = await withStudy(shell, folder, [], make, beside);
  if ('stop' in worked) return shell.end(worked.stop);
  try {
    writeAtomically(out, worked.value.files);
  } catch (error) {
    shell.terminal.talk(`error: the report cannot be written to ${out}: ${(error as Error).message}`);
    return shell.end(exitCodes.cannotWrite);
  }
  for (const { character, context } of worked.value.missingCharacters) {
    shell.terminal.talk(`warning: no font has ${character}, it is shown as □ in “${context}”`);
  }
  const written = join(out, 'report.pdf');
  shell.terminal.result(rankingText(worked.value.assessment, worked.reading, { ...shell.terminal, written }));
}
