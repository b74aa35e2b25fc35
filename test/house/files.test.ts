import { describe, expect, it } from 'vitest';
import { projectFiles, sources, textOf } from './project.js';

const longest = 350;

/** Everything that may stand at the top of the project. */
const topLevel = [
  'src',
  'data-demo',
  'templates',
  'test',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'biome.json',
  '.ci',
  '.bundle.mjs',
  '.gitignore',
  '.npmrc',
  '.gitattributes',
  '.editorconfig',
  'vitest.config.ts',
];

const isText = (path: string) => !/\.(pdf|png|ttf|woff2?|ico|jpg)$/.test(path);
const lineCount = (path: string) => textOf(path).split('\n').length - 1;

/** Lines of a file that match, as `path:line`. */
function linesWith(pattern: RegExp, paths: string[]): string[] {
  return paths.flatMap((path) =>
    textOf(path)
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}`] : [])),
  );
}

/** Put together from halves so that this file does not contain what it looks for. */
const either = (...halves: [string, string][]) =>
  new RegExp(halves.map(([a, b]) => `${a}${b}`).join('|'), 'i');

describe('files', () => {
  it('the top of the project holds what it needs and nothing else', () => {
    const top = [...new Set(projectFiles.map((path) => path.split('/')[0] as string))];
    expect(top.filter((name) => !topLevel.includes(name))).toEqual([]);
  });

  it(`no source or test is longer than ${longest} lines`, () => {
    const code = projectFiles.filter((path) => path.endsWith('.ts'));
    expect(code.filter((path) => lineCount(path) > longest)).toEqual([]);
  });

  it('sources stay short: median under 120 lines, nine of ten under 200', () => {
    const lengths = sources()
      .map(lineCount)
      .sort((a, b) => a - b);
    const at = (share: number) => lengths[Math.floor(share * (lengths.length - 1))] ?? 0;
    expect(
      { median: at(0.5) < 120, ninetieth: at(0.9) < 200 },
      `median ${at(0.5)}, 90th percentile ${at(0.9)}`,
    ).toEqual({
      median: true,
      ninetieth: true,
    });
  });

  it('no path of a machine and no words about how the work was organised', () => {
    const words = either(
      ['/wo', 'rk/'],
      ['/fa', 'rm/'],
      ['/ho', 'me/[a-z]'],
      ['/Us', 'ers/[a-z]'],
      ['tran', 'script'],
      ['seed', ' document'],
      ['shared', '/design'],
      ['sub-?', 'agent'],
    );
    const texts = projectFiles.filter((path) => isText(path) && path !== 'package-lock.json');
    expect(linesWith(words, texts)).toEqual([]);
  });

  it('no host of a package registry, neither in the lock file nor elsewhere', () => {
    const hosts = either(
      ['registry', '\\.npmjs'],
      ['"reso', 'lved"'],
      ['npm', '\\.pkg\\.'],
      ['artif', 'actory'],
      ['verd', 'accio'],
    );
    expect(linesWith(hosts, projectFiles.filter(isText))).toEqual([]);
  });

  it('nothing is left to do, silenced or switched off in the sources', () => {
    const left = either(
      ['TO', 'DO\\b'],
      ['FIX', 'ME\\b'],
      ['@ts-', 'ignore'],
      ['@ts-expect', '-error'],
      ['as ', 'any\\b'],
      ['\\.on', 'ly\\('],
    );
    expect(
      linesWith(
        left,
        projectFiles.filter((path) => path.endsWith('.ts')),
      ),
    ).toEqual([]);
  });
});
