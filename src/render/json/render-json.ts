import { withoutSteering } from '../../problem/json-text.js';
import type { Results } from '../../report/index.js';
import { roundSeries } from './round-series.js';

/** Keys that come first, in this order; all others follow in the order of the alphabet. */
const leadingKeys = [
  'format',
  'version',
  'modelVersion',
  'seed',
  'draws',
  'inputHash',
  'id',
  'label',
  'type',
  'rank',
  'passes',
  'score',
  'leader',
  'baseline',
  'answer',
  'verdict',
];

/**
 * Results as JSON text: keys in a fixed order, traces rounded, two spaces of indent, lists of numbers on one line.
 *
 * The same results give the same text, in whatever order their parts were put together. A number that is not
 * finite becomes null, as JSON knows no other way to say it. What could steer a terminal is written as an escape.
 */
export function renderJson(results: Results & { issues?: readonly object[] }): string {
  const candidates = results.candidates.map((candidate) => ({
    ...candidate,
    series: roundSeries(candidate.series),
  }));
  const certainty = results.certainty && {
    ...results.certainty,
    runDownBands: roundSeries(results.certainty.runDownBands),
  };
  return `${withoutSteering(write(ordered({ ...results, candidates, certainty }), ''))}\n`;
}

function ordered(tree: unknown): unknown {
  if (Array.isArray(tree)) return typeof tree[0] === 'number' ? tree : tree.map(ordered);
  if (tree === null || typeof tree !== 'object') return tree;
  const entries = Object.entries(tree)
    .filter(([, value]) => value !== undefined)
    .sort(([a], [b]) => place(a) - place(b) || (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, value]) => [key, ordered(value)]));
}

function place(key: string): number {
  const index = leadingKeys.indexOf(key);
  return index < 0 ? leadingKeys.length : index;
}

function write(tree: unknown, indent: string): string {
  const inner = `${indent}  `;
  if (Array.isArray(tree)) {
    const isFlat = tree.every((item) => item === null || ['number', 'boolean'].includes(typeof item));
    if (isFlat) return `[${tree.map((item) => JSON.stringify(item)).join(', ')}]`;
    return `[\n${tree.map((item) => inner + write(item, inner)).join(',\n')}\n${indent}]`;
  }
  if (tree === null || typeof tree !== 'object') return JSON.stringify(tree);
  const lines = Object.entries(tree).map(
    ([key, value]) => `${inner}${JSON.stringify(key)}: ${write(value, inner)}`,
  );
  return lines.length === 0 ? '{}' : `{\n${lines.join(',\n')}\n${indent}}`;
}
