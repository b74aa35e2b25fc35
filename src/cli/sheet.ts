import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { papers } from './papers.js';
import { type Shell, withStudy } from './shell.js';
import { writeOut } from './write-out.js';

interface SheetOptions {
  out: string;
  page: keyof typeof papers;
  candidate?: string;
  json?: true;
}

/** `sheet <study> --out <folder>`: one page for whoever lets the feature into an event. */
export function addSheet(program: Command, shell: Shell): void {
  program
    .command('sheet')
    .description('write safety-sheet.pdf: one page for the organiser of an event')
    .argument('<study>', 'folder with the CSV files')
    .requiredOption('--out <folder>', 'where the sheet goes; made when it is not there')
    .option('--candidate <id>', 'id in candidates.csv; the drive that is built today when left out')
    .addOption(new Option('--page <size>', 'page size').choices(Object.keys(papers)).default('a4'))
    .option('--json', 'print the figures of the sheet as JSON')
    .addHelpText('after', '\nExample:  holdwright sheet data-demo/lantern-parade --out demo-sheet')
    .action((folder: string, options: SheetOptions) => sheet(folder, options, shell));
}

async function sheet(folder: string, options: SheetOptions, shell: Shell): Promise<void> {
  const { jsonText } = await import('../archive/json-text.js');
  const { safetySheet, sheetName, sheetText } = await import('../app/sheet.js');
  const { out, page, candidate = null, json } = options;
  const dateOf = (studyDate: string) => reportDate(shell.env, studyDate, shell.now);
  const worked = await withStudy(shell, folder, [], (reading) =>
    safetySheet(reading, { candidate, page: papers[page], dateOf }),
  );
  if ('stop' in worked) return shell.end(worked.stop);
  const { value } = worked;
  if (!value.found) {
    shell.terminal.talk(noCandidate(candidate, value));
    return shell.end(exitCodes.wrongUsage);
  }
  if (!(await writeOut(shell, out, value, 'the sheet'))) return;
  const written = join(out, sheetName);
  shell.terminal.result(
    json
      ? jsonText(value.safety)
      : sheetText(value.headlines, value.safety.label, written, shell.terminal.width),
  );
}

function noCandidate(
  id: string | null,
  { known, nearest }: { known: string[]; nearest: string | null },
): string {
  const ids = `\n  known: ${known.join(', ')}`;
  if (id === null) return `error: the study names no baseline; say which drive with --candidate${ids}`;
  return `error: there is no candidate ${id}${nearest === null ? '' : `; did you mean ${nearest}?`}${ids}`;
}
