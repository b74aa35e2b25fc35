import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findSource } from '../../src/sources/sources.js';

const folder = new URL('../../src/physics/', import.meta.url).pathname;
const files = readdirSync(folder).map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));

describe('the formulas', () => {
  it.each(files)('of $name cite what the register holds', ({ text }) => {
    for (const [, id] of text.matchAll(/@source ([^\s,;]+)/g)) expect(findSource(id!), id).toBeDefined();
    for (const [, id] of text.matchAll(/cited\([^,]+, '([^']+)'/g)) expect(findSource(id!), id).toBeDefined();
  });

  it.each(files)('of $name each say where they come from', ({ text }) => {
    const comments = [...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport function (\w+)/g)];
    const functions = [...text.matchAll(/^export function /gm)];
    expect(comments).toHaveLength(functions.length);
    for (const [, comment, name] of comments) {
      expect(comment, name).toMatch(/@source|[Cc]ommon (practice|guidance)|[Ff]rom memory|plain geometry/);
    }
  });
});
