import type { Command } from 'commander';
import { exitCodes } from './exit-codes.js';
import { type Beside, type Reading, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';

/** `explain <study> <candidate>`: the working, from data sheet to minutes. */
export function addExplain(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('explain')))
    .description('show the working of one candidate: equation, numbers put in, result, source')
    .argument('<study>', 'folder with the CSV files')
    .argument('<candidate>', 'id in candidates.csv')
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
  if (value.found) return shell.terminal.result(workingText(value.label, value.lines, shell.terminal.width));
  const hint = value.nearest === null ? '' : `; did you mean ${value.nearest}?`;
  shell.terminal.talk(`error: there is no candidate ${id}${hint}\n  known: ${value.known.join(', ')}`);
  shell.end(exitCodes.wrongUsage);
}
