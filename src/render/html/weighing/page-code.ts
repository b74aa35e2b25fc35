import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/**
 * The program of the page as one script, as the build left it. It is the same ranking that the command runs, not a
 * copy of it.
 */
export async function pageCode(): Promise<string> {
  // By the name the package gives it, because this code itself is read from more than one place.
  const path = createRequire(import.meta.url).resolve('holdwright/page');
  return (await readFile(path, 'utf8')).replaceAll('</', '<\\/');
}
