import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root, textOf } from './project.js';

const scripts: Record<string, string> = JSON.parse(textOf('package.json')).scripts;
const documents = ['README.md', 'DEVELOPERS.md'];

/** Lines of the fenced shell blocks of a page. */
function shellLines(page: string): string[] {
  const blocks = [...textOf(page).matchAll(/```(?:sh|bash)\n([\s\S]*?)```/g)];
  return blocks.flatMap((block) => (block[1] ?? '').split('\n')).filter((line) => line.trim() !== '');
}

describe('pages for people', () => {
  it('the two first commands of README.md are the ones that CI runs', () => {
    const lines = shellLines('README.md');
    expect(lines.slice(0, 2)).toEqual(['npm ci && npm run demo', 'npm ci && npm test']);
    expect(lines.slice(0, 2).every((line) => textOf('.ci/run').includes(line))).toBe(true);
  });

  it('every npm command that a page names exists', () => {
    const named = documents.flatMap((page) =>
      [...textOf(page).matchAll(/npm run ([a-z:-]+)/g)].map((match) => match[1] ?? ''),
    );
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it('every command of the program that a page names has a file of its own', () => {
    const named = documents.flatMap((page) =>
      [...textOf(page).matchAll(/holdwright ([a-z]+) [<a-z./-]/g)].map((match) => match[1] ?? ''),
    );
    expect(named.length).toBeGreaterThan(0);
    expect([...new Set(named)].filter((name) => !existsSync(join(root, `src/cli/${name}.ts`)))).toEqual([]);
  });

  it('every file and folder that a page names exists', () => {
    const named = documents.flatMap((page) =>
      [...textOf(page).matchAll(/`((?:src|test|templates|data-demo|\.ci)\/[\w./-]*)`/g)].map(
        (match) => match[1] ?? '',
      ),
    );
    expect([...new Set(named)].filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });
});
