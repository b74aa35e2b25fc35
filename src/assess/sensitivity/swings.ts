import { type Bounds, quantile } from '../../quantity/quantile.js';
import type { SpreadValue } from '../../quantity/spread.js';

/** An input of the study with its spread, as far as the swings need it. */
export interface SwungInput extends SpreadValue {
  path: string;
  /** Physical bounds, SI; null when there are none. */
  bounds: Bounds | null;
}

/** What one input's 10–90 % range does to an output. */
export interface Swing {
  path: string;
  /** The input's 10 % and 90 % points, SI. */
  low: number;
  high: number;
  /** The output there; NaN where it does not exist. */
  outputs: { low: number; high: number };
  /** Size of the difference; infinite when the output exists at one end only, 0 when at neither. */
  swing: number;
}

/**
 * One output at the 10 % and 90 % points of each input, all others nominal; largest swing first, equal ones by path.
 * Inputs without a spread are left out.
 * @param evaluate the output with one input at a value
 */
export function swings(
  inputs: readonly SwungInput[],
  evaluate: (inputIndex: number, value: number) => number,
): Swing[] {
  const found = inputs.flatMap(({ path, spread, nominal, bounds }, index): Swing[] => {
    const low = quantile(spread, nominal, 0.1, bounds ?? undefined);
    const high = quantile(spread, nominal, 0.9, bounds ?? undefined);
    if (!(high > low)) return [];
    const outputs = { low: evaluate(index, low), high: evaluate(index, high) };
    return [{ path, low, high, outputs, swing: swingOf(outputs.low, outputs.high) }];
  });
  return found.sort((a, b) => compareSizes(b.swing, a.swing) || (a.path < b.path ? -1 : 1));
}

function swingOf(low: number, high: number): number {
  if (Number.isNaN(low) && Number.isNaN(high)) return 0;
  if (Number.isNaN(low) || Number.isNaN(high)) return Number.POSITIVE_INFINITY;
  return low === high ? 0 : Math.abs(high - low);
}

/** Like a difference, but two infinite sizes are equal. */
function compareSizes(a: number, b: number): number {
  return a === b ? 0 : a - b;
}
