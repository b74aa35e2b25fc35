import ts from 'typescript';
import { expect, it } from 'vitest';
import { importsOf } from './imports.js';
import { sources, textOf } from './project.js';

const imports = sources().flatMap(importsOf);

/** Functions and constants that a source exports, and how often it names each itself. */
function exportedValues(path: string): { name: string; mentions: number }[] {
  const source = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
  const mentions = new Map<string, number>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) mentions.set(node.text, (mentions.get(node.text) ?? 0) + 1);
    ts.forEachChild(node, visit);
  };
  visit(source);
  const isExported = (statement: ts.Statement) =>
    ts.canHaveModifiers(statement) &&
    ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
  return source.statements.filter(isExported).flatMap((statement) => {
    const declared = ts.isVariableStatement(statement)
      ? [...statement.declarationList.declarations]
      : [statement].filter(ts.isFunctionDeclaration);
    return declared.map(({ name }) => ({ name: name!.getText(), mentions: mentions.get(name!.getText())! }));
  });
}

it('every formula and constant of physics/ is one that the program computes with', () => {
  const idle = sources('physics/').flatMap((file) => {
    const taken = new Set(imports.filter((found) => found.file === file).flatMap(({ names }) => names));
    const values = exportedValues(file).filter(({ name, mentions }) => !taken.has(name) && mentions < 2);
    return values.map(({ name }) => `${file} ${name}`);
  });
  expect(idle).toEqual([]);
});

it('gravity and the zero of the Celsius scale are written as figures once', () => {
  const files = sources().filter((path) => /\b(9\.80665|273\.15)\b/.test(textOf(path)));
  expect(files).toEqual(['src/quantity/exact.ts']);
});
