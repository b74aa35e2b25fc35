import type { Study } from '../study/study.js';

/** Way to a value inside a study: keys, and ids in place of positions in a list. */
export type Path = readonly string[];

/** A single figure, choice or text of a study; a list of figures counts as one. */
export interface Leaf {
  path: Path;
  value: unknown;
}

/** Properties that say something to people and nothing to the program. */
const forPeople = ['label', 'note', 'source', 'sourceDate', 'extra', 'line', 'file', 'name', 'origin'];

/** A part of a study as text, without what is for people only: the same text, the same results. */
export function plainText(part: unknown): string {
  return JSON.stringify(part, (key, value: unknown) => (forPeople.includes(key) ? undefined : value));
}

/** The single values below a path, by their paths joined with dots; what is for people only is left out. */
export function leavesOf(study: Study, from: Path): Map<string, Leaf> {
  const leaves = new Map<string, Leaf>();
  const collect = (node: unknown, path: Path): void => {
    const isWhole = typeof node !== 'object' || node === null || Array.isArray(node);
    // Something with a name of its own, such as a chemistry, is chosen as a whole.
    if (isWhole || ('id' in node && path.length > from.length))
      leaves.set(path.join('.'), { path, value: node });
    else
      for (const [key, child] of Object.entries(node))
        if (!forPeople.includes(key) && key !== 'id') collect(child, [...path, key]);
  };
  const start = childOf(study, from);
  if (start !== undefined) collect(start, from);
  return leaves;
}

/** The study with one leaf as given, the original untouched; a leaf that is not there in it is taken away. */
export function withLeaf(study: Study, path: Path, leaf: Leaf | undefined): Study {
  return replaced(study, path, leaf?.value) as Study;
}

function replaced(node: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(node))
    return node.map((entry: { id: string }) => (entry.id === key ? replaced(entry, rest, value) : entry));
  if (typeof node !== 'object' || node === null) return node;
  return { ...node, [key]: replaced((node as Record<string, unknown>)[key], rest, value) };
}

function childOf(node: unknown, path: Path): unknown {
  let at: unknown = node;
  for (const key of path) {
    if (isListOfEntries(at)) at = at.find(({ id }) => id === key);
    else if (typeof at === 'object' && at !== null) at = (at as Record<string, unknown>)[key];
    else return undefined;
  }
  return at;
}

function isListOfEntries(node: unknown): node is { id: string }[] {
  return Array.isArray(node) && node.length > 0 && node.every((entry) => typeof entry?.id === 'string');
}
