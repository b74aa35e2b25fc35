import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { importsOf, parsed } from './imports.js';
import { layerOf, sources } from './project.js';

const impureLayers = ['app', 'cli', 'render', 'archive'];

type Rule = [name: string, is: (node: ts.Node) => boolean];

/** What makes a result depend on more than its input. */
const impure: Rule[] = [
  ['the clock', (node) => isNewDate(node) && !isGivenDate(node)],
  ['the clock', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'Date')],
  ['the clock', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'performance')],
  ['chance', (node) => ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random'],
  ['the console', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'console')],
  ['the process', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'process')],
];

/** Reading a date hangs on the time zone of the machine unless the text names one. */
const readsDate: Rule = ['a date', (node) => isGivenDate(node)];

/** Where files are touched. The three of `render/` read what comes with the program: fonts and the compiled page. */
const touchesFiles = [
  'src/archive/store.ts',
  'src/cli/files.ts',
  'src/cli/report-from.ts',
  'src/cli/template-files.ts',
  'src/render/html/style/faces.ts',
  'src/render/html/weighing/page-code.ts',
  'src/render/pdf/fonts.ts',
];

const isNewDate = (node: ts.Node): node is ts.NewExpression =>
  ts.isNewExpression(node) && isNamed(node.expression, 'Date');
const isGivenDate = (node: ts.Node) => isNewDate(node) && (node.arguments?.length ?? 0) > 0;
const isNamed = (node: ts.Node, name: string) => ts.isIdentifier(node) && node.text === name;

/** Nodes of a source that a test points at, as `path:line what`. */
function found(path: string, rules: Rule[]): string[] {
  const source = parsed(path);
  const lines: string[] = [];
  const visit = (node: ts.Node): void => {
    for (const [name, is] of rules) {
      if (!is(node)) continue;
      lines.push(`${path}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${name}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return lines;
}

describe('purity', () => {
  it('pure layers know no clock, no chance, no console and no process, and read no date', () => {
    const pure = sources().filter((path) => !impureLayers.includes(layerOf(path)));
    expect(pure.flatMap((path) => found(path, [...impure, readsDate]))).toEqual([]);
  });

  it('only the command line knows streams, clock and environment', () => {
    expect(sources('app/').flatMap((path) => found(path, [...impure, readsDate]))).toEqual([]);
    expect(sources('render/').flatMap((path) => found(path, impure))).toEqual([]);
    const archive = sources('archive/').filter((path) => path !== 'src/archive/store.ts');
    expect(archive.flatMap((path) => found(path, impure))).toEqual([]);
  });

  it('the disk of the archive knows its process and nothing more', () => {
    const asked = found('src/archive/store.ts', impure).map((line) => line.replace(/^\S+ /, ''));
    expect([...new Set(asked)]).toEqual(['the process']);
  });

  it('files are touched in these places and nowhere else', () => {
    const touching = sources().filter((path) =>
      importsOf(path).some(({ specifier }) => /^node:(fs|child_process)\b/.test(specifier)),
    );
    expect(touching).toEqual(touchesFiles);
  });
});

describe('powers', () => {
  const open: Rule[] = [
    [
      'leaves the last digit to the engine: use power()',
      (node) =>
        (ts.isBinaryExpression(node) &&
          node.operatorToken.kind === ts.SyntaxKind.AsteriskAsteriskToken &&
          node.right.getText() !== '2') ||
        (ts.isPropertyAccessExpression(node) && node.getText() === 'Math.pow'),
    ],
  ];

  it('with another exponent than 2 are the same on every engine', () => {
    expect(sources().flatMap((path) => found(path, open))).toEqual([]);
  });
});

describe('kinds of drive', () => {
  const byKind: Rule[] = [
    [
      'compares with a kind',
      (node) => ts.isStringLiteralLike(node) && isDriveKind(node.text) && isCompared(node.parent),
    ],
  ];
  const isDriveKind = (text: string) => ['position-servo', 'worm-gearmotor', 'screw-actuator'].includes(text);
  const isCompared = (node: ts.Node) => ts.isBinaryExpression(node) || ts.isCaseClause(node);

  it('nothing outside drives/ asks which kind a drive is', () => {
    const asking = sources().filter((path) => layerOf(path) !== 'drives');
    expect(asking.flatMap((path) => found(path, byKind))).toEqual([]);
  });
});
