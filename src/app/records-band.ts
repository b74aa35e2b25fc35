import type { LoggedMeasurement } from '../archive/day-log.js';

/** A reading beside what was predicted of it. */
type Reading = Pick<LoggedMeasurement, 'value' | 'halfWidth' | 'predicted' | 'band'>;

/** Where a reading lies in the band of what is predicted; `edge`: outside, but by less than its own spread. */
export type PlaceInBand = 'inside' | 'edge' | 'below' | 'above';

/** Where a reading lies; null where it has no band. */
export function placeOf({ value, halfWidth, band }: Reading): PlaceInBand | null {
  if (!band) return null;
  if (value >= band.p10 && value <= band.p90) return 'inside';
  if (value + halfWidth >= band.p10 && value - halfWidth <= band.p90) return 'edge';
  return value < band.p10 ? 'below' : 'above';
}

/** Whether a reading agrees with what is predicted: with its band, or where there is none within its own spread. */
export function agrees(entry: Reading): boolean {
  const place = placeOf(entry);
  if (place !== null) return place === 'inside' || place === 'edge';
  return entry.predicted === null || Math.abs(entry.predicted - entry.value) <= entry.halfWidth;
}
