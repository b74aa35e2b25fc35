import { formatIssue } from '../problem/format-issue.js';
import type { Issue } from '../problem/issue.js';
import { jsonText } from '../problem/json-text.js';
import type { Shell, World } from './shell.js';

/** A shell that knows which command runs and how it is to answer. */
export interface AnsweringShell extends Shell {
  /** Told before a command begins. */
  begin(command: string, json: boolean): void;
}

/**
 * The shell of one run. Words go to standard output and talk to standard error; with `--json` standard output holds
 * one object and nothing else, also where the command stops with nothing but issues.
 */
export function answeringShell(world: World): AnsweringShell {
  const issues: Issue[] = [];
  let command: string | null = null;
  let isAnswered = false;

  const write = (data: object | string): void => {
    isAnswered = true;
    const told = { format: `holdwright-${command}/1`, ...(data as object), issues: issues.map(issueData) };
    world.terminal.result(typeof data === 'string' ? data : jsonText(told));
  };
  return {
    ...world,
    begin(name, json) {
      command = json ? name : null;
    },
    tell(told) {
      issues.push(...told);
      if (told.length > 0) world.terminal.talk(told.map(formatIssue).join('\n'));
    },
    answer(text, data) {
      if (command === null) world.terminal.result(text());
      else write(data(issues.map(issueData)));
    },
    end(code) {
      if (command !== null && !isAnswered) write({});
      world.end(code);
    },
  };
}

/** An issue with its keys in one order. */
function issueData({ code, severity, file, line, column, received, expected, message, hint }: Issue): Issue {
  return { code, severity, file, line, column, received, expected, message, hint };
}

/** The `--json` flag, the same for every command. */
export const jsonFlag = ['--json', 'print the result, or what is wrong, as JSON'] as const;
