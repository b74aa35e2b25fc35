import { quoted } from './printable.js';
import { errorOf, type Trouble } from './trouble.js';

/** A criterion that has no scale, so that it cannot be weighed. */
export function viewCriterionWithoutScale(id: string): Trouble {
  return errorOf(
    'view-criterion-without-scale',
    id,
    'a criterion with a scale',
    `the criterion ${quoted(id)} is met or not and cannot be weighed`,
    'make it a limit in criteria.csv instead',
  );
}

/** The same criterion twice in one view. */
export function viewCriterionTwice(view: string, id: string): Trouble {
  return errorOf(
    'view-criterion-twice',
    id,
    'every criterion once in a view',
    `the view ${quoted(view)} weighs ${quoted(id)} twice`,
    'delete one of the rows',
  );
}
