import { join } from 'node:path';
import { type Command, Option } from 'commander';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { systemReason } from './file-names.js';
import { writeAtomically } from './files.js';
import { missingCharacterIssues } from './missing-characters.js';
import { type Shell, withStudy } from './shell.js';

interface ReportOptions {
  out: string;
  page: keyof typeof papers;
}

/** Names of paper on the command line, and in the report. */
const papers = { a4: 'A4', letter: 'Letter' } as const;

/** `report <study> --out <folder>`: the PDF and the results, and the ranking on the terminal. */
export function addReport(program: Command, shell: Shell): void {
  program
    .command('report')
    .description('write report.pdf and results.json')
    .argument('<study>', 'folder with the CSV files')
    .requiredOption('--out <folder>', 'where the report goes; made when it is not there')
    .addOption(new Option('--page <size>', 'page size').choices(Object.keys(papers)).default('a4'))
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright report data-demo/lantern-parade --out demo-report')
    .action((folder: string, options: ReportOptions) => report(folder, options, shell));
}

async function report(folder: string, { out, page }: ReportOptions, shell: Shell): Promise<void> {
  const { assessStudy, rankingText, reportFiles } = await import('../app/study.js');
  const worked = await withStudy(shell, folder, [], async (reading) => {
    const assessed = assessStudy(reading);
    if (!assessed.ok) return assessed;
    const date = reportDate(shell.env, assessed.value.study.about.date, shell.now);
    const made = await reportFiles(assessed.value, reading, { page: papers[page], date });
    return { ...assessed, value: { assessment: assessed.value, ...made } };
  });
  if ('stop' in worked) return shell.end(worked.stop);
  try {
    writeAtomically(out, worked.value.files);
  } catch (error) {
    const place = { file: out, line: null, column: null };
    shell.tell([issueAt(place, say.unwritable(systemReason(error), 'name another folder with --out'))]);
    return shell.end(exitCodes.cannotWrite);
  }
  const { assessment, files, missingCharacters } = worked.value;
  shell.tell(missingCharacterIssues(missingCharacters));
  const written = join(out, 'report.pdf');
  shell.answer(
    () => rankingText(assessment, worked.reading.templates, { ...shell.terminal, written }),
    () => ({
      folder: out,
      files: files.map(({ name }) => name),
      leader: assessment.leader,
      verdict: assessment.verdict,
    }),
  );
}
