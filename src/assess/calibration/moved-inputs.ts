import { quantile } from '../../quantity/quantile.js';
import type { Study } from '../../study/study.js';
import { bandOf } from '../certainty/bands.js';
import type { Band, CalibrationOutcome } from '../certainty.js';
import { labelledField } from '../what-if/labelled-field.js';
import { shownAs } from '../what-if/shown-value.js';
import type { PriorDraws } from './prior-draws.js';

/** An input moved when its middle did by this share of its former 10–90 % range, or the range shrank by as much. */
const movedShare = 0.1;

/** Most inputs that are told. */
const told = 8;

/** The inputs of which more is known now: those that moved or narrowed most, first. */
export function movedInputs(
  study: Study,
  { inputs, columns }: PriorDraws,
  taken: Int32Array,
): CalibrationOutcome['moved'] {
  return inputs
    .map(({ path, field, owner, spread, nominal, bounds }, index) => {
      const column = columns[index]!;
      const at = (share: number) => quantile(spread, nominal, share, bounds ?? undefined);
      const before = { p10: at(0.1), median: at(0.5), p90: at(0.9) };
      const after = bandOf(Float64Array.from(taken, (draw) => column[draw]!))!;
      const width = before.p90 - before.p10;
      const shift = width > 0 ? Math.abs(after.median - before.median) / width : 0;
      const shrunk = width > 0 ? 1 - (after.p90 - after.p10) / width : 0;
      return { path, field, owner, before, after, moved: Math.max(shift, shrunk) };
    })
    .filter(({ moved }) => moved >= movedShare)
    .sort((a, b) => b.moved - a.moved || (a.path < b.path ? -1 : 1))
    .slice(0, told)
    .map(({ path, field, owner, before, after }) => {
      const show = shownAs(study.provenance.find((entry) => entry.path === path));
      const shown = ({ p10, median, p90 }: Omit<Band, 'occursFraction'>) =>
        `${show(median)} (${show(p10)} to ${show(p90)})`;
      return {
        path,
        label: labelledField(study, field, owner),
        beforeShown: shown(before),
        afterShown: shown(after),
      };
    });
}
