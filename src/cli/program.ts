import { Command, CommanderError } from 'commander';
import * as say from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { type AnsweringShell, answeringShell } from './answer.js';
import { addCheck } from './check.js';
import { addCompare } from './compare.js';
import { addCompletion } from './completion.js';
import { addDecide } from './decide.js';
import { exitCodes } from './exit-codes.js';
import { addExplain } from './explain.js';
import { addMeasure } from './measure.js';
import { addNew } from './new.js';
import { addRank } from './rank.js';
import { addRecords } from './records.js';
import { addReopen } from './reopen.js';
import { addReport } from './report.js';
import { addSheet } from './sheet.js';
import type { World } from './shell.js';

/**
 * Runs one command. Wrong usage and our own mistakes are told here and nowhere else.
 * @param argv as Node gives it: program, script, then the words of the user
 */
export async function runProgram(argv: string[], world: World): Promise<void> {
  const shell = answeringShell(world);
  const program = programFor(shell);
  try {
    await program.parseAsync(argv);
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.exitCode !== 0) shell.end(exitCodes.wrongUsage);
    } else if (isTemplateError(error)) {
      shell.tell(
        error.problems.map(({ file, line, problem }) =>
          issueAt({ file: `templates/${file}`, line, column: null }, say.badTemplate(problem)),
        ),
      );
      shell.end(exitCodes.inputErrors);
    } else {
      const trace = error instanceof Error ? error.stack : String(error);
      shell.terminal.talk(`holdwright ${shell.version} made a mistake that is not yours:\n${trace}`);
      shell.end(exitCodes.ourFault);
    }
  }
}

/** Commands that compute a study, and to which more threads are of use. */
const computing = ['check', 'measure', 'rank', 'report', 'sheet', 'explain', 'decide', 'reopen', 'compare'];

/** Faults in templates, told by its name: the folder that knows it is not loaded for every command. */
function isTemplateError(
  error: unknown,
): error is Error & { problems: readonly { file: string; line: number; problem: string }[] } {
  return error instanceof Error && error.name === 'TemplateError';
}

/** The commands with their flags, not yet run. */
export function programFor(shell: AnsweringShell): Command {
  const program = new Command('holdwright')
    .description('Compares drives that must hold a pose in battery-powered moving features.')
    .version(shell.version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => shell.terminal.result(text),
      writeErr: (text) => shell.terminal.talk(text),
    })
    .showHelpAfterError('Add --help for how to use it.')
    .hook('preAction', (_, command) => shell.begin(command.name(), command.opts().json === true))
    .hook('preAction', (_, command) =>
      computing.includes(command.name()) ? shell.helpers.call() : undefined,
    )
    .addHelpText('after', '\nBegin with:  holdwright new my-study --drive worm-gearmotor');
  addNew(program, shell);
  addCheck(program, shell);
  addMeasure(program, shell);
  addRank(program, shell);
  addReport(program, shell);
  addSheet(program, shell);
  addExplain(program, shell);
  addDecide(program, shell);
  addRecords(program, shell);
  addReopen(program, shell);
  addCompare(program, shell);
  addCompletion(program, shell);
  return program;
}
