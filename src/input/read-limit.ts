import * as say from '../problem/criteria-messages.js';
import type { Report } from '../problem/trouble.js';
import { quantity } from '../quantity/field.js';
import { formatQuantity } from '../quantity/format.js';
import type { NumberStyle } from '../quantity/number-text.js';
import type { CriterionId, Limit } from '../study/choosing.js';
import { criterionFacts } from '../study/choosing-fields.js';
import { readCell } from './read-cell.js';
import type { Cell } from './table.js';

const words: Record<Limit['direction'], string> = { 'at-least': 'at least', 'at-most': 'at most' };
const patterns: readonly (readonly [RegExp, Limit['direction']])[] = [
  [/^(?:at least|min\.?|minimum|not below|>=|≥|>)\s*/i, 'at-least'],
  [/^(?:at most|max\.?|maximum|not above|up to|<=|≤|<)\s*/i, 'at-most'],
];

/**
 * Reads a hard limit: `at least 40 min`, `at most 2.5 kg`, a bare value in the criterion's direction, or `yes` for
 * criteria that are met or not (bound 1). Blank and `no` are no limit.
 */
export function readLimit(
  id: CriterionId,
  cell: Cell | undefined,
  style: NumberStyle,
  report: Report,
): Limit | null {
  const text = cell?.text.trim() ?? '';
  if (cell === undefined || text === '') return null;
  const { dimension, habitualUnit, direction, meaning } = criterionFacts[id];
  if (dimension === null) {
    if (/^(?:yes|y|true|must)$/i.test(text)) return { direction, bound: 1 };
    if (!/^(?:no|n|false)$/i.test(text)) report(cell.place, say.limitNotYes(id, cell.text));
    return null;
  }
  const stated = patterns.find(([pattern]) => pattern.test(text));
  const value = stated === undefined ? text : text.replace(stated[0], '');
  const field = { ...quantity('must', 'must', dimension, { meaning, how: '' }), habitualUnit };
  const reading = readCell(field, { ...cell, text: value }, style, (place, trouble) =>
    report(place, trouble.code === 'not-a-number' ? say.limitNotRead(cell.text) : trouble),
  );
  if (reading.state !== 'given') return null;
  const taken = stated?.[1] ?? direction;
  if (stated === undefined) report(cell.place, say.limitTaken(id, text, `${words[direction]} ${value}`));
  else if (taken !== direction)
    report(cell.place, say.limitAgainstDirection(id, text, `${words[direction]} ${value}`));
  return { direction: taken, bound: reading.value as number };
}

/** A limit as criteria.csv would have it; empty without one. */
export function limitText(id: CriterionId, limit: Limit | null): string {
  if (limit === null) return '';
  const { dimension } = criterionFacts[id];
  return dimension === null ? 'yes' : `${words[limit.direction]} ${formatQuantity(limit.bound, dimension)}`;
}
