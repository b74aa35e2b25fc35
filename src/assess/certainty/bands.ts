import type { Band } from '../certainty.js';

/**
 * The 10, 50 and 90 % points of a column over the draws in which it occurs, straight lines between neighbours.
 * May be infinite, where a drive does not yield or a winding never settles.
 * @param column NaN = does not occur in that draw
 * @returns null when it never occurs
 */
export function bandOf(column: Float64Array): Band | null {
  const sorted = column.slice().sort();
  // What does not occur has gone to the end.
  let count = sorted.length;
  while (count > 0 && Number.isNaN(sorted[count - 1])) count--;
  if (count === 0) return null;
  const found = sorted.subarray(0, count);
  return {
    p10: quantileOf(found, 0.1),
    median: quantileOf(found, 0.5),
    p90: quantileOf(found, 0.9),
    occursFraction: found.length / column.length,
  };
}

/** @param sorted rising, at least one */
export function quantileOf(sorted: Float64Array, share: number): number {
  const place = (sorted.length - 1) * share;
  const low = sorted[Math.floor(place)]!;
  const high = sorted[Math.ceil(place)]!;
  return low === high ? low : low + (high - low) * (place - Math.floor(place));
}

/** Share of draws in which something holds. */
export function shareOf(drawCount: number, holds: (draw: number) => boolean): number {
  let times = 0;
  for (let draw = 0; draw < drawCount; draw++) if (holds(draw)) times++;
  return drawCount > 0 ? times / drawCount : 0;
}
