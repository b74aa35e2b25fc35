import type { Study } from '../study/study.js';

/** Lists in the study whose entries a path names by id: `candidates.worm-a.sheet.massKg`. */
type NamedEntry = { id: string };

/**
 * The study with one number changed, the original untouched.
 * @param path as in a value's provenance: `feature.massKg`, `loads.eyes.powerW`
 * @returns null when the path leads nowhere in this study
 */
export function withValueAt(study: Study, path: string, value: number): Study | null {
  const changed = replaced(study, path, value);
  return changed === null ? null : (changed as Study);
}

/** The number a path leads to; null when there is none. */
export function valueAt(study: Study, path: string): number | null {
  let at: unknown = study;
  for (let rest = path; rest !== ''; ) {
    const step = nextStep(at, rest);
    if (step === null) return null;
    at = step.child;
    rest = step.rest;
  }
  return typeof at === 'number' ? at : null;
}

function replaced(node: unknown, path: string, value: number): unknown {
  const step = nextStep(node, path);
  if (step === null) return null;
  const child = step.rest === '' ? value : replaced(step.child, step.rest, value);
  if (child === null) return null;
  if (Array.isArray(node)) return node.map((entry, index) => (index === step.key ? child : entry));
  return { ...(node as object), [step.key]: child };
}

interface Step {
  key: string | number;
  child: unknown;
  rest: string;
}

/** One step along a path; an id may itself contain dots, so ids are matched whole. */
function nextStep(node: unknown, path: string): Step | null {
  if (Array.isArray(node)) {
    const index = (node as NamedEntry[]).findIndex(({ id }) => path === id || path.startsWith(`${id}.`));
    const entry = (node as NamedEntry[])[index];
    return entry === undefined ? null : { key: index, child: entry, rest: path.slice(entry.id.length + 1) };
  }
  if (typeof node !== 'object' || node === null) return null;
  const [key = '', ...others] = path.split('.');
  if (!Object.hasOwn(node, key)) return null;
  return { key, child: (node as Record<string, unknown>)[key], rest: others.join('.') };
}
