import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { genericEndings, openNames, pureEndings, qualifiers, unitEndings } from './endings.js';
import { parsed } from './imports.js';
import { layerOf, sources } from './project.js';

/** Where people's units or points on paper live; names there follow their own surroundings. */
const otherUnits = ['input', 'quantity', 'render', 'problem'];

interface NumberProperty {
  where: string;
  name: string;
  series: boolean;
}

/** Properties of exported interfaces and object types whose type is a number or a series of numbers. */
function numberProperties(path: string): NumberProperty[] {
  const source = parsed(path);
  const found: NumberProperty[] = [];
  const collect = (node: ts.Node): void => {
    if (ts.isPropertySignature(node) && node.type !== undefined && ts.isIdentifier(node.name)) {
      const kind = numberKind(node.type);
      const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      if (kind !== null)
        found.push({ where: `${path}:${line}`, name: node.name.text, series: kind === 'series' });
    }
    ts.forEachChild(node, collect);
  };
  for (const statement of source.statements) {
    const isType = ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement);
    if (isType && statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword))
      collect(statement);
  }
  return found;
}

function numberKind(type: ts.TypeNode): 'number' | 'series' | null {
  if (ts.isUnionTypeNode(type)) {
    const kinds = type.types
      .filter((part) => part.getText() !== 'null' && part.getText() !== 'undefined')
      .map(numberKind);
    return kinds.length > 0 && kinds.every((kind) => kind === kinds[0]) ? (kinds[0] ?? null) : null;
  }
  const text = type.getText().replace(/^readonly /, '');
  if (text === 'number') return 'number';
  return /^(number\[\]|\(number \| null\)\[\]|Float64Array|Int32Array|Uint8Array)$/.test(text)
    ? 'series'
    : null;
}

const trailing = new RegExp(`(${Object.keys(qualifiers).join('|')})$`);
const upper = (name: string) => name[0]!.toUpperCase() + name.slice(1);
const endings = [...Object.keys(unitEndings), ...Object.keys(pureEndings)];
const generic = Object.keys(genericEndings);

/** Whether a name says what its number counts; series say it in the plural. */
function says({ name, series }: NumberProperty): boolean {
  if (Object.hasOwn(openNames, name)) return true;
  const bare = name.replace(trailing, '');
  const single = series ? singulars(bare) : [bare];
  return single.some(
    (one) =>
      endings.some(
        (ending) =>
          one.length > ending.length &&
          one.endsWith(ending) &&
          /[a-z0-9]$/.test(one.slice(0, -ending.length)),
      ) || generic.some((word) => one === word || one.endsWith(upper(word))),
  );
}

/** `positions` → position, `voltagesV` → voltageV; nothing for a name that is no plural. */
function singulars(name: string): string[] {
  const units = Object.keys(unitEndings).sort((a, b) => b.length - a.length);
  const unit = units.find((ending) => name.endsWith(`s${ending}`));
  if (unit !== undefined) return [name.slice(0, -unit.length - 1) + unit];
  return name.endsWith('s') ? [name.slice(0, -1), name.replace(/es$/, ''), name.replace(/ies$/, 'y')] : [];
}

describe('names of numbers', () => {
  it('end in their unit, or say that they have none', () => {
    const properties = sources()
      .filter((path) => !otherUnits.includes(layerOf(path)))
      .flatMap(numberProperties);
    expect(properties.length).toBeGreaterThan(100);
    expect(
      properties.filter((property) => !says(property)).map(({ where, name }) => `${where} ${name}`),
    ).toEqual([]);
  });

  it.each([
    ['massKg', false, true],
    ['mass', false, false],
    ['timesS', true, true],
    ['timeS', true, false],
    ['positions', true, true],
    ['stallEffort', false, true],
    ['stretchRatios', true, true],
    ['runtimeMin', false, false],
    ['torqueKgcm', false, false],
  ])('%s (series: %s) is a name that says it: %s', (name, series, good) => {
    expect(says({ where: '', name, series })).toBe(good);
  });
});
