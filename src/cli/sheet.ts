import { join } from 'node:path';
import { type Command, Option } from 'commander';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { papers } from './papers.js';
import { type Beside, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';
import { writeOut } from './write-out.js';

interface SheetOptions extends Beside {
  out: string;
  page: keyof typeof papers;
  candidate?: string;
}

/** `sheet <study> --out <folder>`: one page for whoever lets the feature into an event. */
export function addSheet(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('sheet')))
    .description('write safety-sheet.pdf: one page for the organiser of an event')
    .argument('<study>', 'folder with the CSV files')
    .requiredOption('--out <folder>', 'where the sheet goes; made when it is not there')
    .option('--candidate <id>', 'id in candidates.csv; the drive that is built today when left out')
    .addOption(new Option('--page <size>', 'page size').choices(Object.keys(papers)).default('a4'))
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright sheet data-demo/lantern-parade --out demo-sheet')
    .action((folder: string, options: SheetOptions) => sheet(folder, options, shell));
}

async function sheet(folder: string, options: SheetOptions, shell: Shell): Promise<void> {
  const { safetySheet, sheetName, sheetText } = await import('../app/sheet.js');
  const { out, page, candidate = null, ...beside } = options;
  const dateOf = (studyDate: string) => reportDate(shell.env, studyDate, shell.now);
  const wish = { candidate, page: papers[page], dateOf };
  const worked = await withStudy(shell, folder, [], (reading) => safetySheet(reading, wish), beside);
  if ('stop' in worked) return shell.end(worked.stop);
  const { value } = worked;
  if (!value.found) {
    const place = { file: '--candidate', line: null, column: null };
    const { known, nearest } = value;
    const trouble =
      candidate === null ? say.noBaseline(known) : say.unknownCandidate(candidate, known, nearest);
    shell.tell([issueAt(place, trouble)]);
    return shell.end(exitCodes.wrongUsage);
  }
  if (!(await writeOut(shell, out, value, 'the sheet'))) return;
  const written = join(out, sheetName);
  shell.answer(
    () => sheetText(value.headlines, value.safety.label, written, shell.terminal.width),
    () => ({ folder: out, files: [sheetName], safety: value.safety }),
  );
}
