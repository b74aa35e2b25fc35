#!/usr/bin/env node
import * as module from 'node:module';
import { setFlagsFromString } from 'node:v8';

// Compiled code is kept between runs where Node can do that, from 22.1 on; so nothing else is loaded before.
(module as { enableCompileCache?(): unknown }).enableCompileCache?.();
// Older ones optimise every function that runs for a moment, in each thread anew, and that takes longer than it saves.
if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=500000');
await import('./start.js');
