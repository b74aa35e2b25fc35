import type { Dimension } from './dimension.js';
import type { DisplayUnits } from './display-units.js';
import { displayUnitOf, formatNumber } from './format.js';
import { unitOf } from './unit-table.js';

/** Units that sentences are written in and that other systems write otherwise; longer symbols first. */
const written: readonly (readonly [symbol: string, dimension: Dimension])[] = [
  ['N·m/rad', 'rotary-stiffness'],
  ['kg·cm²', 'inertia'],
  ['kg·m²', 'inertia'],
  ['g·cm²', 'inertia'],
  ['kg·cm', 'torque'],
  ['mN·m', 'torque'],
  ['N·m', 'torque'],
  ['N/mm', 'linear-stiffness'],
  ['N/m', 'linear-stiffness'],
  ['K/W', 'thermal-resistance'],
  ['J/K', 'heat-capacity'],
  ['mm/s', 'speed'],
  ['m/s', 'speed'],
  ['cm²', 'area'],
  ['m²', 'area'],
  ['mm', 'length'],
  ['cm', 'length'],
  ['m', 'length'],
  ['kg', 'mass'],
  ['g', 'mass'],
  ['N', 'force'],
  ['°C', 'temperature'],
  ['K', 'temperature'],
];

const number = String.raw`[-−]?\d+(?:\.\d+)?`;
const between = String.raw`(?:–|\.\.| to | × )`;
const symbols = written.map(([symbol]) => symbol).join('|');

/** `4 m/s`, `12–30 mm`, `54 × 20 × 47 mm`, `±5 K`, `420 g (400–440)`. */
const figure = new RegExp(
  String.raw`(?<![\p{L}\d.,_-])(±?)(${number}(?:${between}${number})*)([ \u00a0])(${symbols})(?![\p{L}\p{N}·/²°])` +
    String.raw`( \(${number}${between}${number}\))?`,
  'gu',
);

/**
 * Writes the figures of sentences in other units: `falls with 4 m/s` → `falls with 13 ft/s`. Sentences are written once,
 * with figures as `formatValue` writes them, and read here again; digits that count stay as many.
 *
 * @param quotes texts of the user, such as names, in which nothing is a figure of the program
 */
export function restater(units: DisplayUnits, quotes: readonly string[] = []): (text: string) => string {
  const restate = (text: string) =>
    text.replace(figure, (...[, sign, figures, gap, symbol, spread = '']: string[]) =>
      restated(units, { sign: sign!, figures: figures!, gap: gap!, symbol: symbol!, spread }),
    );
  const kept = quotes.filter((quote) => quote !== '' && restate(quote) !== quote);
  if (kept.length === 0) return restate;
  const longestFirst = [...new Set(kept)].sort((a, b) => b.length - a.length);
  const parts = new RegExp(`(${longestFirst.map(escaped).join('|')})`);
  return (text) =>
    text
      .split(parts)
      .map((part, index) => (index % 2 === 1 ? part : restate(part)))
      .join('');
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
}

interface Figure {
  /** `±`, or nothing. */
  sign: string;
  figures: string;
  gap: string;
  symbol: string;
  spread: string;
}

function restated(units: DisplayUnits, { sign, figures, gap, symbol, spread }: Figure): string {
  const dimension = written.find(([known]) => known === symbol)![1];
  const from = unitOf(symbol, dimension);
  // A difference of temperatures has no zero to be shifted by.
  const isDifference = dimension === 'temperature' && (sign !== '' || symbol === 'K');
  const numbers = (text: string) =>
    [...text.matchAll(new RegExp(number, 'g'))].map(([found]) => numberOf(found));
  const largest = Math.max(...numbers(figures + spread).map((value) => Math.abs(from.toSi(value))));
  const name = displayUnitOf(largest, dimension, units);
  const to = unitOf(name, dimension);
  const inUnit = (text: string): string => {
    const value = numberOf(text);
    const shown = isDifference ? (value * from.slope(value)) / to.slope(value) : to.fromSi(from.toSi(value));
    const told =
      dimension === 'temperature' ? shown.toFixed(placesOf(text)) : formatNumber(shown, digitsOf(text));
    return told.replace('-', text.startsWith('-') ? '-' : '−');
  };
  const each = (text: string) => text.replace(new RegExp(number, 'g'), inUnit);
  return `${sign}${each(figures)}${gap}${name}${each(spread)}`;
}

function numberOf(text: string): number {
  return Number(text.replace('−', '-'));
}

/** Digits that count, at least two and at most three. */
function digitsOf(text: string): number {
  const digits = text.replace(/^[-−]?0*\.?0*/, '').replace('.', '').length;
  return Math.min(3, Math.max(2, digits));
}

/** Digits behind the point; temperatures keep theirs. */
function placesOf(text: string): number {
  return text.split('.')[1]?.length ?? 0;
}
