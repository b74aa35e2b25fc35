import { inverseNormalShare } from '../../quantity/normal.js';
import { sigmasInHalfWidth } from '../../quantity/spread.js';
import { Sfc32 } from '../../simulate/sampling/sfc32.js';
import { quantileOf } from '../certainty/bands.js';
import type { Knowable } from './knowable.js';

/** How exactly a reading is asked for, from coarse to fine: half widths of its 95 % interval. */
const askedFor: Record<Knowable['scale'], { steps: readonly number[]; show(value: number): string }> = {
  share: { steps: [0.2, 0.1, 0.05, 0.03, 0.02, 0.01], show: (share) => `±${Math.round(share * 100)} %` },
  temperature: { steps: [10, 5, 2, 1, 0.5], show: (kelvins) => `±${kelvins} K` },
  angle: {
    steps: [5, 2, 1, 0.5].map((degrees) => (degrees * Math.PI) / 180),
    show: (angleRad) => `±${Number(((angleRad * 180) / Math.PI).toFixed(1))}°`,
  },
};

/** A reading is exact enough when it is worth this share of knowing the value. */
const enough = 0.8;

/** A reading coarser than this share of what is known already tells little. */
const tellsMore = 0.7;

/** A worth too small to be worth a search. */
const noWorth = 0.0005;

/**
 * The coarsest reading that is worth nearly as much as knowing the value, and tells more than is known; the finest
 * where none is.
 * @param sorted the values, rising
 * @param worthScore of knowing the value exactly
 * @param worthsIn of knowing each of several columns
 */
export function precisionOf(
  { values, scale }: Knowable,
  sorted: Float64Array,
  worthScore: number,
  seed: number,
  worthsIn: (columns: readonly Float64Array[]) => number[],
): string {
  const { steps: all, show } = askedFor[scale];
  const figure = scale === 'share' ? Math.abs(quantileOf(sorted, 0.5)) : 1;
  const known = (quantileOf(sorted, 0.9) - quantileOf(sorted, 0.1)) / 2;
  const telling = all.filter((step) => step * figure <= tellsMore * known);
  const steps = telling.length > 0 ? telling : all.slice(-1);
  if (!(worthScore >= noWorth)) return show(steps[0]!);
  const errors = errorsOf(values.length, seed);
  const readings = steps.map((step) => {
    const sigma = (step * figure) / sigmasInHalfWidth;
    return values.map((value, draw) => value + sigma * errors[draw]!);
  });
  const good = worthsIn(readings).findIndex((worth) => worth >= enough * worthScore);
  return show(steps[good < 0 ? steps.length - 1 : good]!);
}

/** One error of a reading per draw, in standard deviations. */
function errorsOf(drawCount: number, seed: number): Float64Array {
  const random = new Sfc32(seed, 'errors of readings');
  return Float64Array.from({ length: drawCount }, () =>
    inverseNormalShare(Math.min(1 - 1e-12, Math.max(1e-12, random.next()))),
  );
}
