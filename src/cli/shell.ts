import { type Command, Option } from 'commander';
import { formatIssue } from '../problem/format-issue.js';
import type { Issue, Result } from '../problem/issue.js';
import { type ExitCode, exitCodes } from './exit-codes.js';
import type { FileContent } from './files.js';
import { studyFiles, templateTexts } from './files.js';
import { type OwnWording, ownWording } from './own-wording.js';
import { startProgress } from './progress.js';
import type { Terminal } from './terminal.js';

/** What a command may use of the world: its terminal, the environment, the clock. */
export interface Shell {
  terminal: Terminal;
  env: NodeJS.ProcessEnv;
  now(): Date;
  version: string;
  /** Sets the exit code of the program. */
  end(code: ExitCode): void;
}

/** What a command hands to the app: files as read, templates, and where to report progress. */
export interface Reading {
  files: FileContent[];
  templates: Record<string, string>;
  /** Pictures of the user's own letterhead. */
  images: OwnWording['images'];
  units: 'metric' | 'us';
  changes: string[];
  version: string;
  progress(step: string): void;
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
  if (files === null) {
    shell.terminal.talk(`error: there is no folder ${folder}\n  hint: holdwright new ${folder} starts one`);
    return { stop: exitCodes.inputErrors };
  }
  const wording = await ownWording(templateTexts(), beside.templates);
  const progress = startProgress(shell.terminal);
  const reading: Reading = {
    files,
    templates: wording.templates,
    images: wording.images,
    units: beside.units ?? 'metric',
    changes,
    version: shell.version,
    progress: progress.step,
  };
  const result = await wording.worked(reading, work).finally(progress.end);
  talkAbout(shell.terminal, result.issues);
  return result.ok ? { value: result.value, reading } : { stop: exitCodes.inputErrors };
}

/** Every issue with its place, then how many there are. */
function talkAbout(terminal: Terminal, issues: Issue[]): void {
  if (issues.length === 0) return;
  const errors = issues.filter((issue) => issue.severity === 'error').length;
  const counts = [counted(errors, 'error'), counted(issues.length - errors, 'warning')].filter(
    (text) => !text.startsWith('0 '),
  );
  terminal.talk([...issues.map(formatIssue), counts.join(', ')].join('\n'));
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
