import { type Command, Option } from 'commander';
import type { Issue, Result } from '../problem/issue.js';
import { type ExitCode, exitCodes } from './exit-codes.js';
import { studyFiles, templateTexts } from './files.js';
import type { HelperThreads } from './helper-threads.js';
import { ownWording } from './own-wording.js';
import { startProgress } from './progress.js';
import type { Reading } from './reading.js';
import type { Terminal } from './terminal.js';

/** What the program may use of the world: its terminal, the environment, the clock. */
export interface World {
  terminal: Terminal;
  env: NodeJS.ProcessEnv;
  now(): Date;
  version: string;
  helpers: HelperThreads;
  /** Sets the exit code of the program. */
  end(code: ExitCode): void;
}

/** The world as a command sees it: with what it takes to answer in words, or with `--json` in data. */
export interface Shell extends World {
  /** Tells issues in words, each with its place; with `--json` the answer holds them as data too. */
  tell(issues: readonly Issue[]): void;
  /**
   * Gives the result of the command.
   * @param text for a person
   * @param data for a program: an object, or JSON text where a command has its own way to write it
   */
  answer(text: () => string, data: (issues: readonly Issue[]) => object | string): void;
}

/** A study read and worked on, or the reason why the command stops. */
export type Worked<T> = { value: T; reading: Reading } | { stop: ExitCode };

/** What a command reads beside its study. */
export interface Beside {
  /** Folder with the user's own templates. */
  templates?: string;
  /** Units in which figures are written; what is computed stays in SI. */
  units?: Reading['units'];
}

/** Lets a command take `--templates`. */
export function takesTemplates(command: Command): Command {
  return command.option('--templates <folder>', 'your own copy of any of the templates');
}

/** Lets a command take `--units`. */
export function takesUnits(command: Command): Command {
  const option = new Option(
    '--units <system>',
    'units of mass, length, force, torque, speed and temperature',
  );
  return command.addOption(option.choices(['metric', 'us']).default('metric'));
}

/**
 * Reads a study folder, lets `work` make something of it, and talks about every issue.
 * Errors in the files end the command; warnings do not.
 */
export async function withStudy<T>(
  shell: Shell,
  folder: string,
  changes: string[],
  work: (reading: Reading) => Promise<Result<T>> | Result<T>,
  beside: Beside = {},
): Promise<Worked<T>> {
  const files = studyFiles(folder);
  shell.tell(files.issues);
  if (!files.ok) return { stop: exitCodes.inputErrors };
  return withFiles(shell, { files: files.value, templates: templateTexts(), changes }, work, beside);
}

/** The same for files that are at hand already. */
export async function withFiles<T>(
  shell: Shell,
  source: Pick<Reading, 'files' | 'templates' | 'changes'>,
  work: (reading: Reading) => Promise<Result<T>> | Result<T>,
  beside: Beside = {},
): Promise<Worked<T>> {
  const wording = await ownWording(source.templates, beside.templates);
  const progress = startProgress(shell.terminal);
  const { threadsOf } = await import('../app/thread-pool.js');
  const reading: Reading = {
    ...source,
    templates: wording.templates,
    images: wording.images,
    units: beside.units ?? 'metric',
    version: shell.version,
    progress: progress.step,
    threads: threadsOf(shell.helpers.called()),
  };
  const result = await wording.worked(reading, work).finally(progress.end);
  shell.helpers.dismiss();
  shell.tell(result.issues);
  tellCounts(shell.terminal, result.issues);
  return result.ok ? { value: result.value, reading } : { stop: exitCodes.inputErrors };
}

/** How many errors and warnings there were. */
function tellCounts(terminal: Terminal, issues: readonly Issue[]): void {
  if (issues.length === 0) return;
  const errors = issues.filter((issue) => issue.severity === 'error').length;
  const counts = [counted(errors, 'error'), counted(issues.length - errors, 'warning')].filter(
    (text) => !text.startsWith('0 '),
  );
  terminal.talk(counts.join(', '));
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
