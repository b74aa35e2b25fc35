import { shownAs } from '../assess/what-if/shown-value.js';
import { formatQuantity, formatValue } from '../quantity/format.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import { measuredDimensions } from '../study/choosing-fields.js';
import type { Provenance } from '../study/provenance.js';
import type { Study } from '../study/study.js';

/** A value of an input in the unit in which that input is shown. */
export function shownInput({ provenance }: Study, { path }: { path: string }, value: number): string {
  return shownAs(provenance.find((entry) => entry.path === path))(value);
}

/** Name of an input as its maker knows it: `feature.mass`, `stall_torque of servo-now`. */
export function inputName({ field, owner }: Pick<Provenance, 'field' | 'owner'>): string {
  return owner === null ? field : `${field} of ${owner}`;
}

/** A measured or predicted figure with its unit; a dash when there is none. */
export function shownMeasure(quantity: MeasuredQuantity, value: number | null): string {
  if (value === null) return '–';
  if (quantity === 'runtime') return formatValue(value, 'min');
  return formatQuantity(value, measuredDimensions[quantity]);
}

/** A band with its unit: `64.6–79 min`. */
export function shownBand(quantity: MeasuredQuantity, { p10, p90 }: { p10: number; p90: number }): string {
  const [low, high] = [p10, p90].map((value) => shownMeasure(quantity, value)) as [string, string];
  if (low === high) return low;
  const unit = /^[^ ]+( .*)$/.exec(high)?.[1] ?? '';
  const isSameUnit = unit !== '' && low.endsWith(unit) && !low.slice(0, -unit.length).includes(' ');
  return `${isSameUnit ? low.slice(0, -unit.length) : low}–${high}`;
}
