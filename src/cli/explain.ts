import type { Command } from 'commander';
import { unknownCandidate } from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { jsonFlag } from './answer.js';
import { exitCodes } from './exit-codes.js';
import type { Reading } from './reading.js';
import { type Beside, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';

/** `explain <study> <candidate>`: the working, from data sheet to minutes. */
export function addExplain(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('explain')))
    .description('show the working of one candidate: equation, numbers put in, result, source')
    .argument('<study>', 'folder with the CSV files')
    .argument('<candidate>', 'id in candidates.csv')
    .option(...jsonFlag)
    .addHelpText('after', '\nExample:  holdwright explain data-demo/lantern-parade worm-driver')
    .action((folder: string, candidate: string, options: Beside) =>
      explain(folder, candidate, options, shell),
    );
}

async function explain(folder: string, id: string, options: Beside, shell: Shell): Promise<void> {
  const { explainCandidate } = await import('../app/explain.js');
  const { workingText } = await import('../app/working-text.js');
  const work = (reading: Reading) => explainCandidate(reading, id);
  const worked = await withStudy(shell, folder, [], work, options);
  if ('stop' in worked) return shell.end(worked.stop);
  const { value } = worked;
  if (!value.found) {
    const place = { file: '<candidate>', line: null, column: null };
    shell.tell([issueAt(place, unknownCandidate(id, value.known, value.nearest))]);
    return shell.end(exitCodes.wrongUsage);
  }
  shell.answer(
    () => workingText(value.label, value.lines, shell.terminal.width),
    () => ({ candidate: { id, label: value.label }, lines: value.lines }),
  );
}
