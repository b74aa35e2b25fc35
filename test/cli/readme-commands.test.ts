import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { holdwright, projectCopy } from './program.js';

/** Commands of the program in the shell blocks of README.md, in their order. */
const page = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');
const commands = [...page.matchAll(/```sh\n([\s\S]*?)```/g)]
  .flatMap((block) => (block[1] ?? '').split('\n'))
  .filter((line) => line.startsWith('holdwright '))
  .map((line) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? '').slice(1));

describe('every command of README.md runs as written', () => {
  const cwd = projectCopy();

  it.each(commands)('holdwright %s %s', { timeout: 120_000 }, (...args) => {
    const words = args.filter((word) => typeof word === 'string');
    // A folder can be started once only; later lines of the page start it anew.
    const where = words[0] === 'new' ? projectCopy() : cwd;
    if (words.includes('my-study') && words[0] !== 'new') holdwright(['new', 'my-study'], { cwd });
    const ended = holdwright(words, { cwd: where });
    expect(ended.stderr).not.toMatch(/made a mistake/);
    expect([ended.code, ended.code === 0 ? '' : ended.stderr]).toEqual([0, '']);
    expect(ended.stdout).not.toBe('');
  });
});

const commandNames = [
  'new',
  'check',
  'rank',
  'report',
  'sheet',
  'explain',
  'measure',
  'decide',
  'records',
  'reopen',
  'compare',
];

describe('help', () => {
  it.each(commandNames)('of %s shows an example', (command) => {
    const { code, stdout, stderr } = holdwright([command, '--help']);
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toContain(`Example:  holdwright ${command} `);
  });

  it('of the program names every command, and the version is the package’s', () => {
    const { stdout } = holdwright(['--help']);
    for (const command of [...commandNames, 'completion'])
      expect(stdout).toMatch(new RegExp(`^  ${command} `, 'm'));
    expect(holdwright(['--version']).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});
