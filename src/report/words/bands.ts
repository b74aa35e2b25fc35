import type { Band } from '../../assess/certainty.js';
import { fixed, joined, none, type Reading, type ReadingName, readingOf } from './figures.js';

/** How a draw's outcome is written: the unit of a reading, or a function of its own. */
type Show = (value: number) => string;

/** Some outcomes have no end: a drive that does not yield, a winding that never settles. */
const showOf =
  (reading: ReadingName | Reading | Show): Show =>
  (value) => {
    if (typeof reading === 'function') return Number.isFinite(value) ? reading(value) : '∞';
    const { show, endless = '∞' } = readingOf(reading);
    return Number.isFinite(value) ? show(value) : endless;
  };

/**
 * Median and 10–90 %: `76 (40–83)`; the figure alone where both ends read the same, or there is no band.
 *
 * @param figure point value, SI, shown without a band
 */
export function banded(
  band: Band | null | undefined,
  figure: number | null | undefined,
  reading: ReadingName | Reading | Show,
): string {
  const show = showOf(reading);
  if (!band) return figure === null || figure === undefined ? none : show(figure);
  const [low, middle, high] = [band.p10, band.median, band.p90].map(show);
  return low === high ? middle! : `${middle} (${low}${rangeDash(low!, high!)}${high})`;
}

/** The same with the unit behind: `76 min (40–83)`. */
export function bandedWithUnit(
  band: Band | null | undefined,
  figure: number | null | undefined,
  reading: ReadingName | Reading,
): string {
  const { unit } = readingOf(reading);
  const show = showOf(reading);
  const point = band ? band.median : figure;
  if (point === null || point === undefined) return none;
  const shown = unit === '' ? show(point) : `${show(point)}${joined}${unit}`;
  if (!band) return shown;
  const [low, high] = [show(band.p10), show(band.p90)];
  return low === high ? shown : `${shown} (${low}${rangeDash(low, high)}${high})`;
}

/** A gain with its sign and band: `+31 min (12–44)`; `0 min` stays without a sign. */
export function gainWithUnit(
  band: Band | null | undefined,
  figure: number | null | undefined,
  reading: ReadingName | Reading,
): string {
  return signed(bandedWithUnit(band, figure, reading), band ? band.median : figure);
}

/** The same without the unit, for columns. */
export function gain(
  band: Band | null | undefined,
  figure: number | null | undefined,
  reading: ReadingName | Reading | Show,
): string {
  return signed(banded(band, figure, reading), band ? band.median : figure);
}

/** A plus sign before what is above nothing, but for what reads as nothing: the sign is that of the figure shown. */
function signed(text: string, point: number | null | undefined): string {
  const isNothing = text === none || text.startsWith('>') || /^0(?:\.0*)?(?![\d.])/.test(text);
  return !isNothing && point! > 0 ? `+${text}` : text;
}

/** A minus sign beside a dash would read as one long one, and `>` behind it as an arrow. */
function rangeDash(low: string, high: string): string {
  return low.startsWith('−') || high.startsWith('>') ? ' to ' : '–';
}

/** A probability as whole per cent, never `100 %` or `0 %` unless it is; a dash when not known. */
export function probability(share: number | null | undefined): string {
  const text = probabilityNumber(share);
  return text === none ? none : `${text}${joined}%`;
}

/** The same without the unit, for columns. */
export function probabilityNumber(share: number | null | undefined): string {
  if (share === null || share === undefined || !Number.isFinite(share)) return none;
  if (share > 0 && share < 0.005) return '<1';
  if (share < 1 && share > 0.995) return '>99';
  return fixed(share * 100, 0);
}
