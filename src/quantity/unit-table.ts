import type { Dimension } from './dimension.js';
import { electricalUnits } from './electrical-units.js';
import { mechanicalUnits } from './mechanical-units.js';
import { unitKey, unitKeyVariants } from './spelling.js';
import type { Unit } from './unit.js';

/** Every unit the tool reads. */
export const units: readonly Unit[] = [...mechanicalUnits, ...electricalUnits];

const bySpelling = new Map<string, Unit[]>();
const byLowerCase = new Map<string, Unit[]>();

function enter(map: Map<string, Unit[]>, key: string, unit: Unit): void {
  const found = map.get(key);
  if (found === undefined) map.set(key, [unit]);
  else if (!found.includes(unit)) found.push(unit);
}

for (const unit of units) {
  const own = unit.slipFor === null ? [unit.symbol] : [];
  for (const spelling of [...own, ...unit.spellings]) {
    const key = unitKey(spelling);
    for (const form of [key, key.replaceAll('·', '')]) {
      enter(bySpelling, form, unit);
      enter(byLowerCase, form.toLowerCase(), unit);
    }
  }
}

/**
 * The units a spelling can mean, of whatever dimension; empty when it is not known.
 * The exact spelling goes first, then any case of it (`NM`, `RPM`), so that `mW` never becomes `MW`.
 */
export function findUnits(spelling: string): readonly Unit[] {
  for (const key of unitKeyVariants(unitKey(spelling))) {
    const exact = bySpelling.get(key);
    if (exact !== undefined) return exact;
  }
  for (const key of unitKeyVariants(unitKey(spelling))) {
    const anyCase = byLowerCase.get(key.toLowerCase());
    if (anyCase !== undefined) return anyCase;
  }
  return [];
}

/**
 * The unit a symbol names in a dimension.
 *
 * @throws when the table has no such unit: a slip in the program, never in a file
 */
export function unitOf(symbol: string, dimension: Dimension): Unit {
  const unit = findUnits(symbol).find((candidate) => candidate.dimension === dimension);
  if (unit === undefined) throw new Error(`no unit ${symbol} for ${dimension}`);
  return unit;
}
