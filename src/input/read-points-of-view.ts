import { inFileOrder } from '../problem/format-issue.js';
import type { Issue } from '../problem/issue.js';
import * as say from '../problem/view-messages.js';
import { choice, quantity, required, text } from '../quantity/field.js';
import { type Criterion, type CriterionId, criterionIds, type ViewWeights } from '../study/choosing.js';
import type { Study } from '../study/study.js';
import { scaleOf } from './criterion-scale.js';
import { issueCollector } from './issue-collector.js';
import type { Assumptions } from './read-assumptions.js';
import { RowReading } from './row-reading.js';
import { readTable, requireColumns } from './table.js';

/** Name of the table of other people's weights, beside the templates. */
export const pointsOfViewFile = 'points-of-view.csv';

const fields = [
  required(text('view', 'view', { meaning: 'short name of the view', how: 'one word' })),
  text('label', 'label', { meaning: 'what the report calls it', how: 'a few words' }),
  required(
    choice('criterion', 'criterion', criterionIds, {
      meaning: 'what counts in this view',
      how: 'choose from the list',
    }),
  ),
  required(
    quantity('weight', 'weightScore', 'ratio', {
      meaning: 'how much it counts, compared with the others of its view',
      how: 'decide it',
      within: '0..1000000',
    }),
  ),
  text('basis', 'basis', { meaning: 'why', how: 'free text' }),
];

/** Views as read, or what is wrong with the table. */
export interface ViewsReading {
  views: ViewWeights[];
  issues: Issue[];
}

/**
 * Reads the table of other people's weights. A criterion takes its scale from the study where it has one there, else
 * the fixed one of the assumptions.
 *
 * @param templates - texts of the templates by name; without the table there are no views
 */
export function readPointsOfView(
  templates: Readonly<Record<string, string>>,
  study: Pick<Study, 'criteria' | 'targetRuntimeS'>,
  assumptions: Assumptions,
): ViewsReading {
  const content = templates[pointsOfViewFile];
  if (content === undefined) return { views: [], issues: [] };
  const collector = issueCollector();
  const names = fields.map(({ name }) => name);
  const file = { name: pointsOfViewFile, bytes: new TextEncoder().encode(content) };
  const table = readTable(file, names, collector.report, true);
  const views = new Map<string, ViewWeights>();
  const absent =
    table === null ? [] : requireColumns(table, ['view', 'criterion', 'weight'], collector.report);
  for (const row of table?.rows ?? []) {
    const reading = new RowReading(null, '', row.place, collector.report);
    reading.read(fields, row.cells, table!.style, undefined, absent);
    const [id, criterion] = [reading.text('view'), reading.text('criterion') as CriterionId | null];
    const weightScore = reading.number('weightScore');
    if (id === null || criterion === null || weightScore === null) continue;
    const view = views.get(id) ?? { id, label: reading.text('label') ?? id, criteria: [] };
    const scale = scaleIn(criterion, study, assumptions);
    if (scale === null) collector.report(reading.at('criterion'), say.viewCriterionWithoutScale(criterion));
    else if (view.criteria.some((entry) => entry.id === criterion))
      collector.report(reading.at('criterion'), say.viewCriterionTwice(id, criterion));
    else
      view.criteria.push({ ...scale, id: criterion, weightScore, must: null, origin: 'assumed', note: '' });
    views.set(id, view);
  }
  return { views: [...views.values()], issues: inFileOrder(collector.issues, [pointsOfViewFile]) };
}

/** The study's own scale of a criterion, or the fixed one; null where it has none. */
function scaleIn(
  id: CriterionId,
  { criteria, targetRuntimeS }: Pick<Study, 'criteria' | 'targetRuntimeS'>,
  assumptions: Assumptions,
): Pick<Criterion, 'worthless' | 'worthFull'> | null {
  const own = criteria.find((criterion) => criterion.id === id);
  if (own !== undefined && own.worthless !== null) {
    return { worthless: own.worthless, worthFull: own.worthFull };
  }
  const scale = scaleOf(id, targetRuntimeS, assumptions);
  return scale === null ? null : { worthless: scale.worthless, worthFull: scale.worthFull };
}
