import { posix } from 'node:path';
import ts from 'typescript';
import { textOf } from './project.js';

/** One import of one source, static or dynamic. */
export interface Import {
  from: string;
  /** As written. */
  specifier: string;
  /** Path from the root for a file of the project; null for a package or a part of Node. */
  file: string | null;
  /** Erased by the compiler. */
  typeOnly: boolean;
  dynamic: boolean;
}

const known = new Map<string, Import[]>();
const trees = new Map<string, ts.SourceFile>();

/** A source as the compiler reads it, parsed once. */
export function parsed(path: string): ts.SourceFile {
  const tree = trees.get(path) ?? ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
  trees.set(path, tree);
  return tree;
}

/** Every import and re-export of a source. */
export function importsOf(path: string): Import[] {
  const found = known.get(path) ?? readImports(path);
  known.set(path, found);
  return found;
}

const fileNamed = (from: string, written: string) =>
  posix.join(posix.dirname(from), written).replace(/\.js$/, '.ts');

function readImports(path: string): Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Expression | undefined, typeOnly: boolean, dynamic = false) => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const written = specifier.text;
    const file = written.startsWith('.') ? fileNamed(path, written) : null;
    found.push({ from: path, specifier: written, file, typeOnly, dynamic });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, isTypeImport(node));
    if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0], false, true);
    }
    ts.forEachChild(node, visit);
  };
  visit(parsed(path));
  return found;
}

/** What the given files import from each file of the project, `*` where all of it; paths from the root. */
export function importedNames(paths: readonly string[]): Map<string, Set<string>> {
  const found = new Map<string, Set<string>>();
  for (const path of paths) {
    const add = (specifier: ts.Expression | undefined, names: string[]) => {
      if (specifier === undefined || !ts.isStringLiteralLike(specifier) || !specifier.text.startsWith('.'))
        return;
      const file = fileNamed(path, specifier.text);
      found.set(file, new Set([...(found.get(file) ?? []), ...names]));
    };
    const visit = (node: ts.Node): void => {
      if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, namesOf(node.importClause?.namedBindings));
      if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, namesOf(node.exportClause));
      if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
        add(node.arguments[0], ['*']);
      ts.forEachChild(node, visit);
    };
    visit(parsed(path));
  }
  return found;
}

function namesOf(bindings: ts.NamedImportBindings | ts.NamedExportBindings | undefined): string[] {
  if (bindings === undefined || !('elements' in bindings)) return ['*'];
  return [...bindings.elements].map(({ propertyName, name }) => (propertyName ?? name).getText());
}

function isTypeImport({ importClause }: ts.ImportDeclaration): boolean {
  if (importClause === undefined) return false;
  if (importClause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const { name, namedBindings } = importClause;
  return (
    name === undefined &&
    namedBindings !== undefined &&
    ts.isNamedImports(namedBindings) &&
    namedBindings.elements.length > 0 &&
    namedBindings.elements.every((element) => element.isTypeOnly)
  );
}
