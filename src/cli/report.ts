import { join } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import type { ReportFormat } from '../app/study.js';
import type { Choice } from '../assess/choosing/rank-again.js';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { writeAtomically } from './files.js';
import { type Shell, withStudy } from './shell.js';

interface ReportOptions {
  out: string;
  page: keyof typeof papers;
  format?: ReportFormat[];
  interactive?: true;
}

/** Names of paper on the command line, and in the report. */
const papers = { a4: 'A4', letter: 'Letter' } as const;

/** What `--format` may say, and the formats it asks for. */
const formatChoices: Record<string, readonly ReportFormat[]> = {
  pdf: ['pdf'],
  html: ['html'],
  both: ['pdf', 'html'],
};

/** `report <study> --out <folder>`: the pages and the results, and the ranking on the terminal. */
export function addReport(program: Command, shell: Shell): void {
  program
    .command('report')
    .description('write report.pdf, report.html or both, and results.json')
    .argument('<study>', 'folder with the CSV files')
    .requiredOption('--out <folder>', 'where the report goes; made when it is not there')
    .addOption(new Option('--page <size>', 'page size').choices(Object.keys(papers)).default('a4'))
    .option('--format <format>', 'pdf, html or both; a list with commas, or given again', formatsAsked)
    .option('--interactive', 'lets the reader of report.html set other weights and drop limits')
    .addHelpText('after', '\nExample:  holdwright report data-demo/lantern-parade --out demo-report')
    .action((folder: string, options: ReportOptions) => report(folder, options, shell));
}

async function report(
  folder: string,
  { out, page, format = ['pdf'], interactive }: ReportOptions,
  shell: Shell,
): Promise<void> {
  if (interactive && !format.includes('html')) {
    shell.terminal.talk('error: --interactive is about report.html\n  hint: add --format html');
    return shell.end(exitCodes.wrongUsage);
  }
  const { assessStudy, rankingText, reportFiles } = await import('../app/study.js');
  const worked = await withStudy(shell, folder, [], async (reading) => {
    let choice: Choice | undefined;
    const keepChoice = (kept: Choice) => {
      choice = kept;
    };
    const assessed = assessStudy(interactive ? { ...reading, keepChoice } : reading);
    if (!assessed.ok) return assessed;
    const date = reportDate(shell.env, assessed.value.study.about.date, shell.now);
    const setting = { page: papers[page], date, formats: format, ...(choice && { choice }) };
    const made = await reportFiles(assessed.value, reading, setting);
    return { ...assessed, value: { assessment: assessed.value, ...made } };
  });
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
  const written = worked.value.files
    .filter(({ name }) => name.startsWith('report.'))
    .map(({ name }) => join(out, name))
    .join(', ');
  shell.terminal.result(
    rankingText(worked.value.assessment, worked.reading.templates, { ...shell.terminal, written }),
  );
}

/** Formats of one `--format`, added to those asked for before; each once. */
function formatsAsked(text: string, before: ReportFormat[] = []): ReportFormat[] {
  const asked = text.split(',').flatMap((word) => {
    const formats = Object.hasOwn(formatChoices, word.trim()) ? formatChoices[word.trim()] : undefined;
    if (formats) return formats;
    throw new InvalidArgumentError(
      `There is no format ${word.trim()}; choose from ${Object.keys(formatChoices).join(', ')}.`,
    );
  });
  return [...new Set([...before, ...asked])];
}
