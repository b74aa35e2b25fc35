import { Argument, type Command } from 'commander';
import { completedCommands, shells } from './completion-scripts.js';
import type { Shell } from './shell.js';

/** `completion <shell>`: a script that completes commands, flags and folders. */
export function addCompletion(program: Command, shell: Shell): void {
  const known = Object.keys(shells) as (keyof typeof shells)[];
  program
    .command('completion')
    .description('print a script that completes commands and flags')
    .addArgument(new Argument('<shell>', 'for which shell').choices(known))
    .addHelpText('after', '\nExample:  holdwright completion bash >> ~/.bashrc')
    .action((name: keyof typeof shells) => shell.terminal.result(shells[name](completedCommands(program))));
}
