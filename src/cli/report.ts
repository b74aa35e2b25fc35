import { join } from 'node:path';
import { type Command, Option } from 'commander';
import type { CarriedStudy } from '../app/rerun.js';
import type { ReportFormat, ReportSetting } from '../app/study.js';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { papers } from './papers.js';
import type { Reading } from './reading.js';
import { formatsAsked } from './report-formats.js';
import { agreementWith, openReport } from './report-from.js';
import { type Beside, type Shell, takesTemplates, takesUnits, withFiles, withStudy } from './shell.js';
import { writeOut } from './write-out.js';

interface ReportOptions extends Beside {
  out: string;
  from?: string;
  page?: keyof typeof papers;
  format?: ReportFormat[];
  interactive?: true;
}

/** `report <study> --out <folder>`: the pages and the results, and the ranking on the terminal; or again from a PDF. */
export function addReport(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('report')))
    .description('write report.pdf, report.html or both, and results.json')
    .argument('[study]', 'folder with the CSV files')
    .option('--from <report.pdf>', 'instead of a study: compute anew from what this report carries')
    .requiredOption('--out <folder>', 'where the report goes; made when it is not there')
    .addOption(
      new Option('--page <size>', 'page size; a4, or with --from that of the report').choices(
        Object.keys(papers),
      ),
    )
    .option('--format <format>', 'pdf, html or both; a list with commas, or given again', formatsAsked)
    .option('--interactive', 'lets the reader of report.html set other weights and drop limits')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright report data-demo/lantern-parade --out demo-report')
    .action((folder: string | undefined, options: ReportOptions, command: Command) => {
      if ((folder === undefined) === (options.from === undefined))
        command.error('error: name either a study folder or, with --from, a report.pdf');
      return report(folder, options, shell);
    });
}

async function report(
  folder: string | undefined,
  { out, page, from, format = ['pdf'], interactive, ...beside }: ReportOptions,
  shell: Shell,
): Promise<void> {
  if (interactive && !format.includes('html')) {
    shell.tell([
      issueAt({ file: '--interactive', line: null, column: null }, say.flagNeeds('--format html')),
    ]);
    return shell.end(exitCodes.wrongUsage);
  }
  const carried = from === undefined ? null : await openReport(from, shell);
  if (carried !== null && 'stop' in carried) return shell.end(carried.stop);
  const { assessStudy, rankingText, reportFiles } = await import('../app/study.js');
  const work = async (reading: Reading) => {
    const kept: Pick<ReportSetting, 'choice'> = {};
    const keepChoice: Reading['keepChoice'] = (choice) => {
      kept.choice = choice;
    };
    const assessed = assessStudy(interactive ? { ...reading, keepChoice } : reading);
    if (!assessed.ok) return assessed;
    const date = carried?.settings.date ?? reportDate(shell.env, assessed.value.study.about.date, shell.now);
    const paper = page === undefined ? (carried?.settings.page ?? 'A4') : papers[page];
    const made = await reportFiles(assessed.value, reading, { page: paper, date, formats: format, ...kept });
    return { ...assessed, value: { assessment: assessed.value, ...made } };
  };
  const worked = carried
    ? await withFiles(
        shell,
        { ...carried, changes: carried.settings.changes },
        work,
        unitsOf(carried, beside),
      )
    : await withStudy(shell, folder!, [], work, beside);
  if ('stop' in worked) return shell.end(worked.stop);
  if (!(await writeOut(shell, out, worked.value, 'the report'))) return;
  const { assessment, files } = worked.value;
  const agreed = carried ? await agreementWith(carried, assessment) : null;
  const names = files.map(({ name }) => name);
  const pages = names.filter((name) => name.startsWith('report.')).map((name) => join(out, name));
  shell.answer(
    () =>
      [
        rankingText(assessment, worked.reading, { ...shell.terminal, written: pages.join(', ') }),
        ...(agreed ? [agreed.text(from!, shell.terminal.width)] : []),
      ].join('\n'),
    () => ({
      folder: out,
      files: names,
      leader: assessment.leader,
      verdict: assessment.verdict,
      ...(agreed && { agreement: agreed.agreement }),
    }),
  );
}

/** A report that is computed anew keeps its units. */
function unitsOf({ settings: { units } }: CarriedStudy, beside: Beside): Beside {
  return units === undefined ? beside : { ...beside, units };
}
