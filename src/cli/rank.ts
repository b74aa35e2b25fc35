import type { Command } from 'commander';
import { type Beside, type Reading, type Shell, takesTemplates, takesUnits, withStudy } from './shell.js';

interface RankOptions extends Beside {
  json?: true;
  set: string[];
}

/** `rank <study>`: the ranking on the terminal, or everything as JSON. */
export function addRank(program: Command, shell: Shell): void {
  takesUnits(takesTemplates(program.command('rank')))
    .description('rank the candidates of a study')
    .argument('<study>', 'folder with the CSV files')
    .option('--json', 'print every result as JSON')
    .option('--set <item=value>', 'what happens if: replace a value; may be given again', collected, [])
    .addHelpText(
      'after',
      '\nExample:  holdwright rank data-demo/lantern-parade --set "feature.mass=700 g" --set pack.carried=1',
    )
    .action((folder: string, options: RankOptions) => rank(folder, options, shell));
}

async function rank(folder: string, options: RankOptions, shell: Shell): Promise<void> {
  const { assessStudy, rankingText, resultsText } = await import('../app/study.js');
  // What only the report shows takes its time; a person who asks for the ranking waits for less.
  const assess = (reading: Reading) => assessStudy(reading, options.json ? 'report' : 'ranking');
  const worked = await withStudy(shell, folder, options.set, assess, options);
  if ('stop' in worked) return shell.end(worked.stop);
  const { value: assessment, reading } = worked;
  shell.terminal.result(
    options.json ? resultsText(assessment) : rankingText(assessment, reading, shell.terminal),
  );
}

function collected(value: string, before: string[]): string[] {
  return [...before, value];
}
