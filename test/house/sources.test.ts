import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { findSource } from '../../src/sources/sources.js';

const root = new URL('../../src/', import.meta.url).pathname;

it('every @source in the code names a publication of the register', () => {
  const unknown: string[] = [];
  for (const path of readdirSync(root, { recursive: true, encoding: 'utf8' })) {
    if (!path.endsWith('.ts')) continue;
    for (const [, id] of readFileSync(`${root}${path}`, 'utf8').matchAll(/@source ([a-z0-9-]+)/g)) {
      if (findSource(id!) === undefined) unknown.push(`${path}: ${id}`);
    }
  }
  expect(unknown).toEqual([]);
});
