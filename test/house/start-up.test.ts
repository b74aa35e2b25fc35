import { expect, it } from 'vitest';
import { importsOf } from './imports.js';
import { sources } from './project.js';

/** Everything that is loaded before a command does its work: static imports only, types left out. */
function loadedAtStart(path: string, seen = new Set<string>()): Set<string> {
  if (seen.has(path)) return seen;
  seen.add(path);
  for (const { file, specifier, typeOnly, dynamic } of importsOf(path)) {
    if (typeOnly || dynamic) continue;
    if (file === null) seen.add(specifier);
    else loadedAtStart(file, seen);
  }
  return seen;
}

it('help and version load the command line only: no study, no charts, no PDF', () => {
  const loaded = [...loadedAtStart('src/cli/start.ts')];
  const packages = loaded.filter((name) => !name.startsWith('src/') && !name.startsWith('node:'));
  expect(packages).toEqual(['commander']);
  expect(loaded.filter((name) => /^src\/(?!cli\/|problem\/)/.test(name))).toEqual([]);
});

it('charts and PDF are loaded by whoever writes a report, and by nobody else', () => {
  const heavy = ['vega', 'vega-lite', 'pdfkit', '@cantoo/pdf-lib'];
  const outside = sources().filter((path) => !path.startsWith('src/render/'));
  const early = outside.filter((path) => [...loadedAtStart(path)].some((name) => heavy.includes(name)));
  expect(early).toEqual([]);
});
