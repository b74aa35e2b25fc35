import { limitName } from '../../assess/criterion-words.js';
import { listed } from '../../assess/figures.js';
import type { LeftOut } from '../../study/choosing.js';
import { labelOf, type ReportContext } from '../context.js';
import { fieldWords } from './outcome-words.js';

/** What the score leaves out for every candidate, and for want of what; empty when nothing. */
export function leftOutWords(context: ReportContext): string {
  return context.assessment.study.criteria
    .flatMap(({ id, leftOut }) =>
      leftOut === undefined || leftOut.weightScore === 0
        ? []
        : [
            context.phrases('left-out', {
              criterion: limitName(id),
              blanks: blankWords(leftOut, context),
            }),
          ],
    )
    .join(' ');
}

/** `price of Worm and Screw`. */
function blankWords({ blanks }: LeftOut, context: ReportContext): string {
  const fields = [...new Set(blanks.map(({ field }) => field))];
  return fields
    .map((field) => {
      const owners = blanks.filter((blank) => blank.field === field);
      return `${fieldWords(field)} of ${listed(owners.map(({ candidate }) => labelOf(context, candidate)))}`;
    })
    .join('; ');
}
