import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { layerOf, sources, textOf } from './project.js';

const impureLayers = ['app', 'cli', 'render', 'archive'];

/** What makes a result depend on more than its input. */
const impure: [name: string, is: (node: ts.Node) => boolean][] = [
  ['the clock', (node) => ts.isNewExpression(node) && isNamed(node.expression, 'Date')],
  ['the clock', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'Date')],
  ['the clock', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'performance')],
  ['chance', (node) => ts.isPropertyAccessExpression(node) && node.getText() === 'Math.random'],
  ['the console', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'console')],
  ['the process', (node) => ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'process')],
];

const isNamed = (node: ts.Node, name: string) => ts.isIdentifier(node) && node.text === name;

/** Nodes of a source that a test points at, as `path:line what`. */
function found(path: string, rules: typeof impure): string[] {
  const source = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
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
  it('pure layers know no clock, no chance, no console and no process', () => {
    const pure = sources().filter((path) => !impureLayers.includes(layerOf(path)));
    expect(pure.flatMap((path) => found(path, impure))).toEqual([]);
  });

  it('only the command line knows streams, clock and environment', () => {
    const edge = impure.filter(([name]) => name !== 'chance');
    expect(sources('app/').flatMap((path) => found(path, edge))).toEqual([]);
  });
});

describe('powers', () => {
  const open: typeof impure = [
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
  const byKind: typeof impure = [
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
