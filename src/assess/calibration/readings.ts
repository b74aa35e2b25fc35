import { displayUnitOf } from '../../quantity/format.js';
import type { Measurement } from '../../study/choosing.js';
import { measuredDimensions } from '../../study/choosing-fields.js';
import { bandOf } from '../certainty/bands.js';
import type { CalibrationOutcome } from '../certainty.js';
import type { PriorDraws } from './prior-draws.js';

const never = { p10: Number.NaN, median: Number.NaN, p90: Number.NaN, occursFraction: 0 };

/** Each reading with what was believed of it before and after. */
export function readingsBeforeAndAfter(
  { modelled }: PriorDraws,
  measured: readonly Measurement[],
  taken: Int32Array | null,
): CalibrationOutcome['measured'] {
  return measured.map(({ quantity, value }) => {
    const column = modelled[quantity]!;
    return {
      quantity,
      measured: value,
      before: bandOf(column) ?? never,
      after: taken === null ? null : bandOf(Float64Array.from(taken, (draw) => column[draw]!)),
      unit: displayUnitOf(value, measuredDimensions[quantity]),
    };
  });
}
