import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { emptyFolder, holdwright } from './program.js';

const has = (tool: string) => spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;

/** A folder with two folders and the script in it. */
function prepared(shell: string): string {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'my study'));
  mkdirSync(join(folder, 'records'));
  writeFileSync(join(folder, 'script'), holdwright(['completion', shell]).stdout);
  return folder;
}

const cases: [words: string[], offered: string[]][] = [
  [['reo'], ['reopen']],
  [['--v'], ['--version']],
  [
    ['decide', 'x', '--decision', ''],
    ['adopt', 'keep', 'postpone', 'reject'],
  ],
  [['decide', 'x', '--lo'], ['--look-again']],
  [['reopen', '--s'], ['--study']],
  [
    ['completion', ''],
    ['bash', 'zsh'],
  ],
];

describe.skipIf(!has('bash'))('completion in bash (skipped where it is missing)', () => {
  const folder = prepared('bash');
  const complete = (words: string[]) => {
    const quoted = ['holdwright', ...words].map((word) => `'${word}'`).join(' ');
    const script = `source ./script; COMP_WORDS=(${quoted}); COMP_CWORD=${words.length}; _holdwright; printf '%s\\n' "\${COMPREPLY[@]}"`;
    return spawnSync('bash', ['-c', script], { cwd: folder, encoding: 'utf8' });
  };

  it.each(cases)('of %j offers %j', (words, offered) => {
    const { stdout, stderr } = complete(words);
    expect([stderr, stdout.trim().split('\n')]).toEqual(['', offered]);
  });

  it('offers folders where a folder is wanted, names with spaces whole', () => {
    expect(complete(['check', 'my']).stdout).toBe('my study\n');
  });
});

describe.skipIf(!has('zsh'))('completion in zsh (skipped where it is missing)', () => {
  const folder = prepared('zsh');

  it.each(cases)('of %j offers %j among its words', (words, offered) => {
    const quoted = ['holdwright', ...words].map((word) => `'${word}'`).join(' ');
    // Stands in for the shell's own: prints what it is given; the shell itself would filter by the prefix.
    const stubs = 'compdef() {}; compadd() { shift; print -l -- "$@" }; _files() { print FOLDERS }';
    const script = `${stubs}; source ./script; words=(${quoted}); CURRENT=${words.length + 1}; _holdwright`;
    const { stdout, stderr } = spawnSync('zsh', ['-f', '-c', script], { cwd: folder, encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(stdout.trim().split('\n')).toEqual(expect.arrayContaining(offered));
  });
});

it('completion of a shell nobody knows is wrong usage', () => {
  expect(holdwright(['completion', 'fish']).code).toBe(2);
});
