import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const importLine = /^import .*? from '(\.[^']+)';\n/gm;

/**
 * The program of the page as one script: the compiled module and all it imports, each once and before who needs it,
 * with imports and exports taken off. It is the same ranking that the command runs, not a copy of it.
 * @param entry the compiled module that starts everything; its imports must all be files beside or above it
 */
export async function pageCode(entry = compiledPage()): Promise<string> {
  const seen = new Set<string>();
  const parts: string[] = [];
  const add = async (file: URL): Promise<void> => {
    if (seen.has(file.href)) return;
    seen.add(file.href);
    const code = await readFile(file, 'utf8');
    for (const [, path] of code.matchAll(importLine)) await add(new URL(path!, file));
    parts.push(
      code
        .replace(importLine, '')
        .replace(/^export (?=const|function|class)/gm, '')
        .replace(/^export \{\};?\n/gm, ''),
    );
  };
  await add(entry);
  return `(() => {\n'use strict';\n${parts.join('')}})();`.replaceAll('</', '<\\/');
}

/** The compiled page, by the name the package gives it: this code is read from more than one place. */
const compiledPage = (): URL =>
  pathToFileURL(createRequire(import.meta.url).resolve('holdwright/compiled-page'));
