import { exitCodes } from './exit-codes.js';
import { programVersion } from './files.js';
import { helperThreads } from './helper-threads.js';
import { runProgram } from './program.js';
import { processTerminal } from './terminal.js';

const terminal = processTerminal(process.env);
process.exitCode = exitCodes.done;
await runProgram(process.argv, {
  terminal,
  env: process.env,
  now: () => new Date(),
  version: programVersion(),
  helpers: helperThreads(process.env.HOLDWRIGHT_THREADS),
  end(code) {
    process.exitCode = code;
  },
});
