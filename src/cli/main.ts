#!/usr/bin/env node
import { exitCodes } from './exit-codes.js';
import { programVersion } from './files.js';
import { runProgram } from './program.js';
import { processTerminal } from './terminal.js';

const terminal = processTerminal(process.env);
process.exitCode = exitCodes.done;
await runProgram(process.argv, {
  terminal,
  env: process.env,
  now: () => new Date(),
  version: programVersion(),
  end(code) {
    process.exitCode = code;
  },
});
