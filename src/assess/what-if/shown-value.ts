import { formatNumber, formatQuantity, formatValue } from '../../quantity/format.js';
import type { Unit } from '../../quantity/unit.js';
import { findUnits } from '../../quantity/unit-table.js';
import type { Provenance } from '../../study/provenance.js';

/**
 * Writes values of one input as its own figure is written on the input pages: in the same unit, unless the number would
 * be below 1 in it, where a smaller unit reads better.
 */
export type ShowValue = (value: number) => string;

/**
 * How to write other values of an input.
 * @param entry its history; undefined for a factor on something the tool worked out
 */
export function shownAs(entry: Provenance | undefined): ShowValue {
  if (entry === undefined) return (factor) => `× ${formatNumber(factor, 2)}`;
  const unit = unitOf(entry);
  if (unit === null) return (value) => formatNumber(value, 3);
  return (value) =>
    Math.abs(unit.fromSi(value)) < 1
      ? formatQuantity(value, unit.dimension)
      : formatValue(value, unit.symbol, 3, unit.dimension);
}

/** The unit in which a figure is shown; the one of several with the same symbol that gives the number shown. */
export function unitOf({ shown, value }: Pick<Provenance, 'shown' | 'value'>): Unit | null {
  const [, number, symbol] = /^(-?[\d.]+) ([^()]+?)(?: \(.*\))?$/.exec(shown) ?? [];
  if (number === undefined || symbol === undefined || typeof value !== 'number') return null;
  const told = Number(number);
  return (
    findUnits(symbol).find((unit) => Math.abs(unit.fromSi(value) - told) <= 0.01 * Math.abs(told) + 1e-9) ??
    null
  );
}
