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
  /** What is taken, under the names it has there; empty for all of it. */
  names: string[];
}

const known = new Map<string, Import[]>();

/** Every import and re-export of a source. */
export function importsOf(path: string): Import[] {
  const found = known.get(path) ?? readImports(path);
  known.set(path, found);
  return found;
}

function readImports(path: string): Import[] {
  const source = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
  const found: Import[] = [];
  const add = (specifier: ts.Expression | undefined, typeOnly: boolean, names: string[], dynamic = false) => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const written = specifier.text;
    const file = written.startsWith('.')
      ? posix.join(posix.dirname(path), written).replace(/\.js$/, '.ts')
      : null;
    found.push({ from: path, specifier: written, file, typeOnly, dynamic, names });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node))
      add(node.moduleSpecifier, isTypeImport(node), namesIn(node.importClause?.namedBindings));
    if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly, namesIn(node.exportClause));
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0], false, [], true);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function namesIn(bindings: ts.NamedImportBindings | ts.NamedExportBindings | undefined): string[] {
  if (bindings === undefined || !(ts.isNamedImports(bindings) || ts.isNamedExports(bindings))) return [];
  return bindings.elements.map(({ propertyName, name }) => (propertyName ?? name).text);
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
