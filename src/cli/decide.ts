import { type Command, Option } from 'commander';
import type { Decision } from '../archive/record.js';
import { jsonFlag } from './answer.js';
import { reportDate } from './clock.js';
import { exitCodes } from './exit-codes.js';
import { missingCharacterIssues } from './missing-characters.js';
import type { Reading } from './reading.js';
import { moment, today } from './records-clock.js';
import { type Beside, type Shell, takesTemplates, withStudy } from './shell.js';

interface DecideOptions extends Beside {
  choose: string;
  decision: Decision;
  because: string;
  archive: string;
  by?: string;
  date?: string;
  lookAgain?: string;
  supersedes?: string;
}

const decisions = ['adopt', 'keep', 'postpone', 'reject'] satisfies Decision[];

/** `decide <study> …`: files the decision with the inputs as they were, the results, the report and the reason. */
export function addDecide(program: Command, shell: Shell): void {
  takesTemplates(program.command('decide'))
    .description('file a decision with its reason, the inputs as they were, results and report')
    .argument('<study>', 'folder with the CSV files')
    .requiredOption('--choose <candidate>', 'id in candidates.csv')
    .addOption(
      new Option('--decision <word>', 'what is decided about it').choices(decisions).makeOptionMandatory(),
    )
    .requiredOption('--because <reason>', 'why, in your own words')
    .requiredOption('--archive <folder>', 'where records are kept; made when it is not there')
    .option('--by <name>', 'who decides; whoever prepared the study when left out')
    .option('--date <date>', 'day of the decision; today when left out')
    .option('--look-again <date>', 'day on which to open it again')
    .option('--supersedes <record>', 'id of the record that this one replaces')
    .option(...jsonFlag)
    .addHelpText(
      'after',
      '\nExample:  holdwright decide data-demo/lantern-parade --choose worm-driver --decision adopt --because "it holds for free" --archive records',
    )
    .action((folder: string, options: DecideOptions) => decide(folder, options, shell));
}

async function decide(folder: string, options: DecideOptions, shell: Shell): Promise<void> {
  const app = await import('../app/decide.js');
  const { decidedData, decidedText } = await import('../app/decide-text.js');
  const { disk } = await import('../archive/store.js');
  const words = {
    choose: options.choose,
    decision: options.decision,
    because: options.because,
    by: options.by ?? null,
    date: options.date ?? today(shell),
    lookAgain: options.lookAgain ?? null,
    supersedes: options.supersedes ?? null,
  };
  const file = (reading: Reading) => {
    const dateOf = (studyDate: string) => reportDate(shell.env, studyDate, shell.now);
    const filing = { words, archive: options.archive, now: moment(shell), reportDate: dateOf };
    return app.decide({ ...reading, ...filing }, disk);
  };
  const worked = await withStudy(shell, folder, [], file, options);
  if ('stop' in worked) return shell.end(worked.stop);
  const { value } = worked;
  if (value.filed === null)
    return shell.end(value.why === 'usage' ? exitCodes.wrongUsage : exitCodes.cannotWrite);
  const { filed, missingCharacters } = value;
  shell.tell(missingCharacterIssues('report.pdf', missingCharacters));
  shell.answer(
    () => decidedText(filed, shell.terminal.width),
    () => decidedData(filed),
  );
}
