import { inverseNormalShare, normalShare } from './normal.js';
import { power } from './power.js';
import type { Spread } from './spread.js';
import { sigmasInHalfWidth } from './spread.js';

/** Draws of a normal spread stay within so many standard deviations. */
const cutSigmas = 3;

/** Limits a value cannot leave, SI. */
export interface Bounds {
  low: number;
  high: number;
}

/** Whether a range is taken in the logarithm: high/low ≥ 3 with low > 0. */
export function isLogarithmic(low: number, high: number): boolean {
  return low > 0 && high / low >= 3;
}

/**
 * The value below which a share p of the draws falls.
 *
 * @param spread - how poorly the value is known; null counts as exact
 * @param nominal - the nominal figure; centre of a normal spread
 * @param p - 0…1; 0 and 1 give the ends, for a normal spread those at 3 σ
 * @param bounds - physical bounds at which draws are cut; the ends of a range are inside them already
 */
export function quantile(spread: Spread | null, nominal: number, p: number, bounds?: Bounds): number {
  if (spread === null || spread.shape === 'exact') return nominal;
  return quantileOf[spread.shape](spread as never, nominal, p, bounds);
}

/** The 10, 50 and 90 % points of a spread. */
export function spreadQuantiles(
  spread: Spread | null,
  nominal: number,
  bounds?: Bounds,
): { p10: number; p50: number; p90: number } {
  const at = (p: number) => quantile(spread, nominal, p, bounds);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/** The median of a spread. */
export function median(spread: Spread | null, nominal: number): number {
  return quantile(spread, nominal, 0.5);
}

/** Half of the width of the central 95 % of a spread; 0 when it is exact. */
export function halfWidth95(spread: Spread | null, nominal: number): number {
  if (spread !== null && spread.shape === 'normal') return spread.halfWidth;
  return (quantile(spread, nominal, 0.975) - quantile(spread, nominal, 0.025)) / 2;
}

type Shaped<S extends Spread['shape']> = Extract<Spread, { shape: S }>;

const quantileOf = {
  uniform({ low, high }: Shaped<'uniform'>, _nominal: number, p: number): number {
    return isLogarithmic(low, high) ? low * power(high / low, p) : low + (high - low) * p;
  },
  triangular({ low, mode, high }: Shaped<'triangular'>, _nominal: number, p: number): number {
    if (!isLogarithmic(low, high)) return triangle(low, mode, high, p);
    return Math.exp(triangle(Math.log(low), Math.log(mode), Math.log(high), p));
  },
  normal({ halfWidth }: Shaped<'normal'>, nominal: number, p: number, bounds?: Bounds): number {
    const sigma = halfWidth / sigmasInHalfWidth;
    const lowest = Math.max(-cutSigmas, bounds === undefined ? -cutSigmas : (bounds.low - nominal) / sigma);
    const highest = Math.min(cutSigmas, bounds === undefined ? cutSigmas : (bounds.high - nominal) / sigma);
    if (!(lowest < highest)) return nominal;
    const from = normalShare(lowest);
    const to = normalShare(highest);
    const sigmas = inverseNormalShare(from + (to - from) * p);
    return nominal + sigma * Math.min(highest, Math.max(lowest, sigmas));
  },
};

function triangle(low: number, mode: number, high: number, p: number): number {
  const width = high - low;
  const rising = (mode - low) / width;
  return p < rising
    ? low + Math.sqrt(p * width * (mode - low))
    : high - Math.sqrt((1 - p) * width * (high - mode));
}
