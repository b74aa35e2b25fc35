/** What a JSON text may hold. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Where a chart is drawn: across a page, or on a screen as narrow as a telephone's. */
export type ChartPlace = 'wide' | 'narrow';

/**
 * A specification for one place. Any part of it may hold a `wide` and a `narrow`: what is said there holds in that
 * place only and goes before what the part says otherwise. `null` takes away: in the part itself all of it, inside
 * of `wide` or `narrow` what it stands for.
 */
export function placed(node: Json, place: ChartPlace): Json {
  if (Array.isArray(node)) {
    return node.filter((item) => !isObject(item) || item[place] !== null).map((item) => placed(item, place));
  }
  if (!isObject(node)) return node;
  const parts = Object.entries(node).filter(([key, value]) => !isPlace(key) || !isPlaced(value));
  const own = node[place];
  const all = isObject(own)
    ? [
        ...parts.filter(([key]) => !(key in own)),
        ...Object.entries(own).filter(([, value]) => value !== null),
      ]
    : parts;
  return Object.fromEntries(all.map(([key, value]) => [key, placed(value, place)]));
}

function isObject(node: Json | undefined): node is { [key: string]: Json } {
  return node !== null && typeof node === 'object' && !Array.isArray(node);
}

function isPlace(key: string): key is ChartPlace {
  return key === 'wide' || key === 'narrow';
}

/** A row of data may have a column of that name. */
function isPlaced(value: Json): boolean {
  return value === null || isObject(value);
}
