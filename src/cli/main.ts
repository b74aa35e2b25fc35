#!/usr/bin/env node
import * as module from 'node:module';

// Compiled code is kept between runs where Node can do that, from 22.1 on; so nothing else is loaded before.
(module as { enableCompileCache?(): unknown }).enableCompileCache?.();
await import('./start.js');
