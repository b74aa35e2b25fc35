import type { Command } from 'commander';
import { exitCodes } from './exit-codes.js';
import { type Shell, withStudy } from './shell.js';

/** `explain <study> <candidate>`: the working, from data sheet to minutes. */
export function addExplain(program: Command, shell: Shell): void {
  program
    .command('explain')
    .description('show the working of one candidate: equation, numbers put in, result, source')
    .argument('<study>', 'folder with the CSV files')
    .argument('<candidate>', 'id in candidates.csv')
    .addHelpText('after', '\nExample:  holdwright explain data-demo/lantern-parade worm-driver')
    .action((folder: string, candidate: string) => explain(folder, candidate, shell));
}

async function explain(folder: string, id: string, shell: Shell): Promise<void> {
  const { explainCandidate } = await import('../app/explain.js');
  const { workingText } = await import('../app/working-text.js');
  const worked = await withStudy(shell, folder, [], (reading) => explainCandidate(reading, id));
  if ('stop' in worked) return shell.end(worked.stop);
  const { value } = worked;
  if (value.found) return shell.terminal.result(workingText(value.label, value.lines, shell.terminal.width));
  const hint = value.nearest === null ? '' : `; did you mean ${value.nearest}?`;
  shell.terminal.talk(`error: there is no candidate ${id}${hint}\n  known: ${value.known.join(', ')}`);
  shell.end(exitCodes.wrongUsage);
}
