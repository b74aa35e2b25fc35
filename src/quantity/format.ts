import type { Dimension } from './dimension.js';
import { type DisplayUnits, metricDisplay } from './display-units.js';
import type { Spread } from './spread.js';
import type { Unit } from './unit.js';
import { findUnits, unitOf } from './unit-table.js';

/**
 * A number with so many significant digits, without exponent and without trailing zeros behind the point.
 * Digits before the point are never blanked: 12345 with three digits stays 12345.
 *
 * @param value - not finite gives `–`
 * @param digits - significant digits, at least 1
 */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return '–';
  if (value === 0) return '0';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(12, Math.max(0, digits - 1 - magnitude));
  const fixed = value.toFixed(decimals);
  const short = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return short === '-0' ? '0' : short;
}

/**
 * An SI value in a unit: `2.45 N·m`, `63 min`, `35 °C`.
 *
 * @param si - the SI value; not finite gives `–`
 * @param unit - a symbol of the unit table; '' for pure numbers
 * @param digits - significant digits
 * @param dimension - needed where a symbol stands in two dimensions (`C`, `mm²`); otherwise found from the symbol
 */
export function formatValue(si: number, unit: string, digits = 3, dimension?: Dimension): string {
  if (!Number.isFinite(si)) return '–';
  return withUnit(formatNumber(unitNamed(unit, dimension).fromSi(si), digits), unit);
}

/** The unit in which a value of this size is shown. */
export function displayUnitOf(si: number, dimension: Dimension, units: DisplayUnits = metricDisplay): string {
  const ladder = units[dimension];
  const step = ladder.findLast(({ from }) => Math.abs(si) >= from * (1 - 1e-9));
  return (step ?? ladder[0]!).unit;
}

/** An SI value in the unit that fits its size: `450 mA`, `1.2 kg`, `63 min`. */
export function formatQuantity(
  si: number,
  dimension: Dimension,
  units: DisplayUnits = metricDisplay,
  digits = 3,
): string {
  return formatValue(si, displayUnitOf(si, dimension, units), digits, dimension);
}

/** Two SI values with one unit: `4–30 mA`, in the unit that fits the larger. */
export function formatRange(
  lowSi: number,
  highSi: number,
  dimension: Dimension,
  units: DisplayUnits = metricDisplay,
  digits = 2,
): string {
  const larger = Math.abs(highSi) >= Math.abs(lowSi) ? highSi : lowSi;
  const symbol = displayUnitOf(larger, dimension, units);
  const unit = unitOf(symbol, dimension);
  const ends = [unit.fromSi(lowSi), unit.fromSi(highSi)].sort((a, b) => a - b);
  const [low, high] = ends.map((value) => formatNumber(value, digits));
  const dash = low!.startsWith('-') || high!.startsWith('-') ? ' to ' : '–';
  return withUnit(`${low}${dash}${high}`, symbol);
}

/**
 * A value with how poorly it is known, in one unit: `10 mA (4–30)`, `420 g (400–440)`; the nominal alone when exact.
 * In parentheses: the ends of a range, the 95 % interval of a `±`.
 */
export function formatWithSpread(
  si: number,
  spread: Spread | null,
  dimension: Dimension,
  unit = displayUnitOf(si, dimension),
): string {
  const nominal = formatValue(si, unit, 3, dimension);
  if (spread === null || spread.shape === 'exact') return nominal;
  const ends =
    spread.shape === 'normal' ? [si - spread.halfWidth, si + spread.halfWidth] : [spread.low, spread.high];
  const inUnit = ends.map((end) => unitOf(unit, dimension).fromSi(end)).sort((a, b) => a - b);
  const [low, high] = inUnit.map((value) => formatNumber(value, 3));
  const dash = low!.startsWith('-') || high!.startsWith('-') ? ' to ' : '–';
  return `${nominal} (${low}${dash}${high})`;
}

function unitNamed(symbol: string, dimension: Dimension | undefined): Unit {
  if (dimension !== undefined) return unitOf(symbol, dimension);
  const unit = findUnits(symbol)[0];
  if (unit === undefined) throw new Error(`no unit ${symbol}`);
  return unit;
}

function withUnit(number: string, unit: string): string {
  if (unit === '') return number;
  return `${number} ${unit}`;
}
