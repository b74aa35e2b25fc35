import type { Dimension } from './dimension.js';

/** A unit as people write it. SI values are what `toSi` gives; nothing else in the program knows the unit. */
export interface Unit {
  /** How the tool writes it: `kg·cm`. */
  symbol: string;
  dimension: Dimension;
  /** Other spellings, before normalisation (see spelling.ts). */
  spellings: readonly string[];
  toSi(value: number): number;
  fromSi(si: number): number;
  /** |d SI / d value| at a value: how much a small step in this unit is in SI. */
  slope(value: number): number;
  /** Symbol that would have been right when the spelling is a known slip (`kg/cm`); null otherwise. */
  slipFor: string | null;
}

/**
 * A unit that is a plain multiple of the SI unit.
 *
 * @param factor - SI units in one of this unit; > 0
 */
export function linear(
  dimension: Dimension,
  symbol: string,
  factor: number,
  spellings: readonly string[] = [],
): Unit {
  return {
    symbol,
    dimension,
    spellings,
    toSi: (value) => value * factor,
    fromSi: (si) => si / factor,
    slope: () => factor,
    slipFor: null,
  };
}

/** A temperature scale with its own zero: SI = (value + shift) × factor. */
export function shifted(symbol: string, shift: number, factor: number, spellings: readonly string[]): Unit {
  return {
    symbol,
    dimension: 'temperature',
    spellings,
    toSi: (value) => (value + shift) * factor,
    fromSi: (si) => si / factor - shift,
    slope: () => factor,
    slipFor: null,
  };
}

/** A speed written as the time for a stretch (`s/60deg`): SI = stretch / value; 0 gives infinity. */
export function reciprocal(
  dimension: Dimension,
  symbol: string,
  stretch: number,
  spellings: readonly string[],
): Unit {
  return {
    symbol,
    dimension,
    spellings,
    toSi: (value) => stretch / value,
    fromSi: (si) => stretch / si,
    slope: (value) => stretch / (value * value),
    slipFor: null,
  };
}

/** The same unit under a spelling that strictly means something else; reading it warns. */
export function slip(unit: Unit, spellings: readonly string[]): Unit {
  return { ...unit, spellings, slipFor: unit.symbol };
}

/** Every pair of two lists of parts as a product: `kg·cm`, `kgf·cm`, … */
export function products(left: readonly string[], right: readonly string[]): string[] {
  return left.flatMap((first) => right.map((second) => `${first}·${second}`));
}

/** The same with the parts in either order, as in `oz·in` and `in·oz`. */
export function productsEitherWay(left: readonly string[], right: readonly string[]): string[] {
  return [...products(left, right), ...products(right, left)];
}

/** Every pair as a quotient: `kg/cm`. */
export function quotients(left: readonly string[], right: readonly string[]): string[] {
  return left.flatMap((first) => right.map((second) => `${first}/${second}`));
}
