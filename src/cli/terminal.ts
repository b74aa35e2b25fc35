import { printable } from '../problem/printable.js';

/** The streams a command talks to: the result on one, the talk about it on the other. */
export interface Terminal {
  result(text: string): void;
  talk(text: string): void;
  /** Replaces the line that the talk stands on; used only when watched. */
  line(text: string): void;
  /** Columns for the result, 80 where nobody watches. */
  width: number;
  /** Whether the result may carry colour. */
  colour: boolean;
  /** Whether somebody watches the talk, so that a progress line makes sense. */
  watched: boolean;
}

/** Widest table that is still easy to read. */
const widestColumns = 100;
const usualColumns = 80;

/** The terminal of this process, as NO_COLOR, FORCE_COLOR and the streams themselves say. */
export function processTerminal(env: NodeJS.ProcessEnv): Terminal {
  quietWhenReaderLeaves();
  const columns = process.stdout.isTTY ? process.stdout.columns : usualColumns;
  return {
    result: (text) => void process.stdout.write(withNewline(text)),
    talk: (text) => void process.stderr.write(withNewline(text.split('\n').map(printable).join('\n'))),
    line: (text) => void process.stderr.write(`\r\u001b[K${printable(text)}`),
    width: Math.min(widestColumns, Math.max(usualColumns, columns || usualColumns)),
    colour: wantsColour(env, process.stdout.isTTY),
    watched: process.stderr.isTTY === true && env.TERM !== 'dumb',
  };
}

/** Colour only where somebody watches; NO_COLOR forbids it, FORCE_COLOR asks for it. */
export function wantsColour(env: NodeJS.ProcessEnv, isTerminal: boolean | undefined): boolean {
  if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false;
  if (env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== '' && env.FORCE_COLOR !== '0') return true;
  return isTerminal === true && env.TERM !== 'dumb';
}

/** `rank … | head` closes the pipe early: that is no fault of anybody. */
function quietWhenReaderLeaves(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
  // The talk goes nowhere then; the command still ends as it would have.
  process.stderr.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

function withNewline(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}
