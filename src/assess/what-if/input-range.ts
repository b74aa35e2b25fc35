import type { SampledInput } from '../../simulate/ensemble/ensemble.js';
import type { Study } from '../../study/study.js';
import { quantileOf } from '../certainty/bands.js';
import { labelledField } from './labelled-field.js';
import { type ShowValue, shownAs } from './shown-value.js';

/** An input as the draws believe it, measurements included. */
export interface InputRange {
  path: string;
  field: string;
  owner: string | null;
  label: string;
  nominal: number;
  p10: number;
  p90: number;
  /** Nearly all draws lie between these. */
  low: number;
  high: number;
  show: ShowValue;
  /** Rising. */
  sorted: Float64Array;
}

/** Share of the draws outside the range on each side. */
const outside = 0.005;

/** The range of one input; null when it never varies. */
export function inputRange(
  study: Study,
  { path, field, owner, values }: SampledInput,
  nominal: number,
): InputRange | null {
  const sorted = values.slice().sort();
  const at = (share: number) => quantileOf(sorted, share);
  if (!(at(0.9) > at(0.1))) return null;
  const entry = study.provenance.find((history) => history.path === path);
  return {
    path,
    field,
    owner,
    label: labelledField(study, field, owner),
    nominal,
    p10: at(0.1),
    p90: at(0.9),
    low: at(outside),
    high: at(1 - outside),
    show: shownAs(entry),
    sorted,
  };
}

/** Share of the draws beyond a value, on the side away from the nominal figure. */
export function shareBeyond({ sorted, nominal }: InputRange, value: number): number {
  const above = value > nominal;
  const count = sorted.filter((drawn) => (above ? drawn >= value : drawn <= value)).length;
  return count / sorted.length;
}
