import * as say from '../problem/criteria-messages.js';
import type { Place } from '../problem/issue.js';
import type { Report } from '../problem/trouble.js';
import { formatNumber } from '../quantity/format.js';
import { plainStyle } from '../quantity/number-text.js';
import { type Criterion, type CriterionId, criterionIds, importanceSteps } from '../study/choosing.js';
import { criterionFields } from '../study/choosing-fields.js';
import type { TriedChange } from '../study/study.js';
import type { Change } from './changes.js';
import { scaleOf } from './criterion-scale.js';
import type { Assumptions } from './read-assumptions.js';
import { readCell } from './read-cell.js';
import { limitText, readLimit } from './read-limit.js';
import type { Cell } from './table.js';

/** What can be tried of a criterion: `runtime.weight=much`, `noise.must=`. */
const changeable = ['weight', 'must'] as const;

/** Every such change by its name. */
export const criterionChanges = criterionIds.flatMap((id) => changeable.map((column) => `${id}.${column}`));

/** Whether a change is about what counts, rather than about a figure. */
export function isCriterionChange({ item }: Change): boolean {
  return criterionChanges.includes(item);
}

/**
 * Tries other weights and limits. A weight is a number or a word of `importanceSteps`; a limit is written as in
 * criteria.csv, and a blank one is dropped. What was changed counts as given.
 * @param file under which issues are listed
 */
export function changeCriteria(
  criteria: readonly Criterion[],
  changes: readonly Change[],
  file: string,
  means: { targetRuntimeS: number | null; assumptions: Assumptions; report: Report },
): { criteria: Criterion[]; tried: TriedChange[] } {
  const changed = [...criteria];
  const tried: TriedChange[] = [];
  for (const { item, value } of changes) {
    const [id, column] = item.split('.') as [CriterionId, (typeof changeable)[number]];
    const place: Place = { file, line: null, column: item };
    const cell: Cell = { text: value, place, unit: null };
    const at = changed.findIndex((criterion) => criterion.id === id);
    const before = changed[at] ?? unweighted(id);
    const from = column === 'must' ? limitText(id, before.must) : formatNumber(before.weightScore);
    tried.push({ item, from, to: value });
    if (column === 'must' && value === '') reportNothingDropped(before, place, means.report);
    const after =
      column === 'must'
        ? { ...before, must: readLimit(id, cell, plainStyle, means.report) }
        : withScale({ ...before, weightScore: readWeight(cell, means.report) }, means);
    changed.splice(at < 0 ? changed.length : at, 1, { ...after, origin: 'given' });
  }
  if (changes.length > 0 && changed.every(({ weightScore }) => weightScore === 0))
    means.report({ file, line: null, column: 'weight' }, say.noWeight());
  return { criteria: changed, tried };
}

/** Warns where dropping a limit changes nothing: none is set, or it holds whatever the criteria say. */
function reportNothingDropped({ id, must }: Criterion, place: Place, report: Report): void {
  if (id === 'fits' || id === 'voltage') report(place, say.limitAlwaysHolds(id));
  else if (must === null) report(place, say.noLimitToDrop(id));
}

function unweighted(id: CriterionId): Criterion {
  return { id, weightScore: 0, worthless: null, worthFull: null, must: null, origin: 'given', note: '' };
}

const steps: Record<string, number> = importanceSteps;

function readWeight(cell: Cell, report: Report): number {
  const word = cell.text.trim().toLowerCase();
  if (Object.hasOwn(steps, word)) return steps[word]!;
  if (!/\d/.test(word)) {
    report(cell.place, say.unknownImportance(cell.text, Object.keys(steps)));
    return 0;
  }
  const field = criterionFields.find(({ name }) => name === 'weight')!;
  const reading = readCell(field, cell, plainStyle, report);
  return reading.state === 'given' ? (reading.value as number) : 0;
}

/** What gets a weight needs a scale; a fixed one where the criteria state none. */
function withScale(
  criterion: Criterion,
  { targetRuntimeS, assumptions }: { targetRuntimeS: number | null; assumptions: Assumptions },
): Criterion {
  if (criterion.worthless !== null || criterion.weightScore === 0) return criterion;
  return { ...criterion, ...scaleOf(criterion.id, targetRuntimeS, assumptions) };
}
