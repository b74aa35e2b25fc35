import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { jsonFlag } from './answer.js';
import { reportDate } from './clock.js';
import { papers } from './papers.js';
import { agreementWith, openReport } from './report-from.js';
import { type Reading, type Shell, withFiles, withStudy } from './shell.js';
import { writeOut } from './write-out.js';

interface ReportOptions {
  out: string;
  from?: string;
  page?: keyof typeof papers;
}

/** `report <study> --out <folder>`: the PDF and the results, and the ranking on the terminal; or again from a PDF. */
export function addReport(program: Command, shell: Shell): void {
  program
    .command('report')
    .description('write report.pdf and results.json')
    .argument('[study]', 'folder with the CSV files')
    .option('--from <report.pdf>', 'instead of a study: compute anew from what this report carries')
    .requiredOption('--out <folder>', 'where the report goes; made when it is not there')
    .addOption(
      new Option('--page <size>', 'page size; a4, or with --from that of the report').choices(
        Object.keys(papers),
      ),
    )
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
  { out, page, from }: ReportOptions,
  shell: Shell,
): Promise<void> {
  const carried = from === undefined ? null : await openReport(from, shell);
  if (carried !== null && 'stop' in carried) return shell.end(carried.stop);
  const { assessStudy, rankingText, reportFiles } = await import('../app/study.js');
  const work = async (reading: Reading) => {
    const assessed = assessStudy(reading);
    if (!assessed.ok) return assessed;
    const date = carried?.settings.date ?? reportDate(shell.env, assessed.value.study.about.date, shell.now);
    const paper = page === undefined ? (carried?.settings.page ?? 'A4') : papers[page];
    const made = await reportFiles(assessed.value, reading, { page: paper, date });
    return { ...assessed, value: { assessment: assessed.value, ...made } };
  };
  const worked = carried
    ? await withFiles(shell, { ...carried, changes: carried.settings.changes }, work)
    : await withStudy(shell, folder!, [], work);
  if ('stop' in worked) return shell.end(worked.stop);
  if (!(await writeOut(shell, out, worked.value, 'the report'))) return;
  const { assessment, files } = worked.value;
  const agreed = carried ? await agreementWith(carried, assessment) : null;
  const written = join(out, 'report.pdf');
  shell.answer(
    () =>
      [
        rankingText(assessment, worked.reading.templates, { ...shell.terminal, written }),
        ...(agreed ? [agreed.text(from!, shell.terminal.width)] : []),
      ].join('\n'),
    () => ({
      folder: out,
      files: files.map(({ name }) => name),
      leader: assessment.leader,
      verdict: assessment.verdict,
      ...(agreed && { agreement: agreed.agreement }),
    }),
  );
}
