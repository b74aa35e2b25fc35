import { objectFrom } from '../archive/json-text.js';
import { type MovedFigure, movedFigures } from './moved-figures.js';
import { differs } from './records-figures.js';
import { resultsFrom } from './records-results.js';
import type { Moved } from './reopen.js';

/** How results computed anew stand to those of before. */
export interface Agreement {
  /** Where in results.json the two differ, the program's version left out: `candidates[0].score`. */
  different: string[];
  /** Those of them that are more than the last digits of a computer. */
  moved: string[];
  /** Key figures that moved; null when the earlier results are not of a form that this program knows. */
  figures: MovedFigure[] | null;
  version: Moved<string>;
  modelVersion: Moved<string>;
}

/**
 * Compares two texts of results.json.
 * @param later as this program wrote it
 */
export function agreementOf(earlier: string, later: string): Agreement {
  const before = objectFrom(earlier) ?? {};
  const now = objectFrom(later) ?? {};
  const [known, computed] = [resultsFrom(earlier), resultsFrom(later)];
  const differences = differencesOf(before, now, '').filter(({ path }) => path !== 'version');
  const moved = (key: string) => ({ earlier: String(before[key] ?? '–'), later: String(now[key]) });
  return {
    different: differences.map(({ path }) => path),
    moved: differences.filter(({ isSmall }) => !isSmall).map(({ path }) => path),
    figures: known && computed && movedFigures(known, computed.candidates),
    version: moved('version'),
    modelVersion: moved('modelVersion'),
  };
}

/** Every place at which two trees part. */
function differencesOf(a: unknown, b: unknown, path: string): { path: string; isSmall: boolean }[] {
  if (isTree(a) && isTree(b) && Array.isArray(a) === Array.isArray(b)) {
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    const below = (key: string) => {
      if (Array.isArray(a)) return `${path}[${key}]`;
      return path === '' ? key : `${path}.${key}`;
    };
    return keys.flatMap((key) => differencesOf(a[key], b[key], below(key)));
  }
  if (a === b) return [];
  const isSmall = typeof a === 'number' && typeof b === 'number' && !differs(a, b);
  return [{ path, isSmall }];
}

function isTree(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
