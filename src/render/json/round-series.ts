/** Digits that count in a trace; more would only make the file larger. */
const digits = 6;

/** Traces with every number at six significant digits; the shape stays. */
export function roundSeries(tree: unknown): unknown {
  if (typeof tree === 'number') return Number.isFinite(tree) ? Number(tree.toPrecision(digits)) : null;
  if (Array.isArray(tree)) return tree.map(roundSeries);
  if (tree === null || typeof tree !== 'object') return tree;
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, roundSeries(value)]));
}
