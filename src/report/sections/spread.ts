import { countText } from '../../assess/figures.js';
import type { ReportContext } from '../context.js';
import type { Block } from '../document.js';
import { spreadTable } from '../tables/spread-table.js';
import type { Filling } from '../template/fill-template.js';

/** Candidates beside each other in one table. */
const perTable = 8;

/** Every outcome over the draws, candidate beside candidate; no section without draws. */
export function spreadSection(context: ReportContext): Filling[] {
  const { certainty } = context.assessment;
  if (certainty === null) return [];
  const blocks: Block[] = [];
  for (let from = 0; from < context.candidates.length; from += perTable) {
    const table = spreadTable(context, context.candidates.slice(from, from + perTable));
    if (table !== null) blocks.push(table);
  }
  if (blocks.length === 0) return [];
  const values = { draws: countText(certainty.draws), spread: { blocks } };
  return [{ values, charts: {} }];
}
