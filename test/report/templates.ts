import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Templates } from '../../src/report/index.js';

const folder = fileURLToPath(new URL('../../templates/', import.meta.url));

/** The project's own templates, as the application reads them. */
export function readTemplates(): Templates {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const texts = names
    .filter((name) => /^(report|charts)[/\\].*\.(md|json)$/.test(name))
    .map((name) => [name.replaceAll('\\', '/'), readFileSync(folder + name, 'utf8')] as const);
  return Object.fromEntries(texts.sort());
}
