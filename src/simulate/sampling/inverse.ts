import { inverseNormalShare, normalShare } from '../../quantity/normal.js';
import { type Bounds, isLogarithmic } from '../../quantity/quantile.js';
import type { Spread } from '../../quantity/spread.js';
import { sigmasInHalfWidth } from '../../quantity/spread.js';

const cutSigmas = 3;

/**
 * Turns shares into draws of a spread: for each share the value below which that share of the draws falls.
 * The same law as `quantile`, for whole columns.
 * @param spread how poorly the value is known; null counts as exact
 * @param nominal the nominal figure; centre of a normal spread, and every draw of an exact one
 * @param bounds physical bounds at which a normal spread is cut; the ends of a range are inside them already
 * @param shares 0…1, one per draw
 * @param out one value per draw, SI; may be the shares themselves
 */
export function fillDraws(
  spread: Spread | null,
  nominal: number,
  bounds: Bounds | null,
  shares: Float64Array,
  out: Float64Array,
): void {
  if (spread === null || spread.shape === 'exact') out.fill(nominal);
  else if (spread.shape === 'uniform') fillUniform(spread.low, spread.high, shares, out);
  else if (spread.shape === 'triangular') fillTriangular(spread, shares, out);
  else fillNormal(spread.halfWidth, nominal, bounds, shares, out);
}

/**
 * Draws of a figure whose spread is given as factors on it, such as ×0.6..0.85..1.05 for figures that flatter.
 * The nominal figure is the one that is multiplied; it need not be the likeliest. A range of factors is taken in the
 * logarithm when its own ends are at a ratio of 3 or more. With a negative figure the draws fall as the shares rise.
 * @param factors spread of the factor; a normal one is centred on 1
 * @param nominal the figure; 0 stays 0
 * @param bounds of the figure, not of the factor
 * @param shares 0…1, one per draw
 * @param out one value per draw, SI
 */
export function fillMultiplied(
  factors: Spread | null,
  nominal: number,
  bounds: Bounds | null,
  shares: Float64Array,
  out: Float64Array,
): void {
  fillDraws(factors, 1, factorBounds(nominal, bounds), shares, out);
  for (let i = 0; i < out.length; i++) out[i] = out[i]! * nominal;
}

/** Bounds of the factor on a figure; none for a figure of 0. */
export function factorBounds(nominal: number, bounds: Bounds | null): Bounds | null {
  if (bounds === null || nominal === 0) return null;
  const [one, other] = [bounds.low / nominal, bounds.high / nominal];
  return { low: Math.min(one, other), high: Math.max(one, other) };
}

function fillUniform(low: number, high: number, shares: Float64Array, out: Float64Array): void {
  if (!isLogarithmic(low, high)) {
    for (let i = 0; i < out.length; i++) out[i] = low + (high - low) * shares[i]!;
    return;
  }
  const width = Math.log(high / low);
  for (let i = 0; i < out.length; i++) out[i] = low * Math.exp(width * shares[i]!);
}

function fillTriangular(
  { low, mode, high }: { low: number; mode: number; high: number },
  shares: Float64Array,
  out: Float64Array,
): void {
  if (!isLogarithmic(low, high)) {
    fillTriangle(low, mode, high, shares, out);
    return;
  }
  fillTriangle(Math.log(low), Math.log(mode), Math.log(high), shares, out);
  for (let i = 0; i < out.length; i++) out[i] = Math.exp(out[i]!);
}

function fillTriangle(
  low: number,
  mode: number,
  high: number,
  shares: Float64Array,
  out: Float64Array,
): void {
  const width = high - low;
  const rising = width > 0 ? (mode - low) / width : 0;
  const up = width * (mode - low);
  const down = width * (high - mode);
  for (let i = 0; i < out.length; i++) {
    const share = shares[i]!;
    out[i] = share < rising ? low + Math.sqrt(share * up) : high - Math.sqrt((1 - share) * down);
  }
}

function fillNormal(
  halfWidth: number,
  nominal: number,
  bounds: Bounds | null,
  shares: Float64Array,
  out: Float64Array,
): void {
  const sigma = halfWidth / sigmasInHalfWidth;
  const lowest = bounds === null ? -cutSigmas : Math.max(-cutSigmas, (bounds.low - nominal) / sigma);
  const highest = bounds === null ? cutSigmas : Math.min(cutSigmas, (bounds.high - nominal) / sigma);
  if (!(sigma > 0 && lowest < highest)) {
    out.fill(nominal);
    return;
  }
  const from = normalShare(lowest);
  const kept = normalShare(highest) - from;
  for (let i = 0; i < out.length; i++) {
    const sigmas = inverseNormalShare(from + kept * shares[i]!);
    out[i] = nominal + sigma * Math.min(highest, Math.max(lowest, sigmas));
  }
}
