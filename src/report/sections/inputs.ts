import type { ReportContext } from '../context.js';
import { inputsTable } from '../tables/inputs-table.js';
import { criteriaTable, cueTable } from '../tables/show-tables.js';
import type { Filling } from '../template/fill-template.js';

/** The cue list, the weights and limits, and every other figure, as they were read or taken. */
export function inputsSection(context: ReportContext): Filling[] {
  const { provenance } = context.assessment.study;
  const count = (origin: string): string =>
    String(provenance.filter((entry) => entry.origin === origin).length);
  const values = {
    given: count('given'),
    assumed: count('assumed'),
    derived: count('derived'),
    cues: { blocks: cueTable(context) },
    criteria: { blocks: criteriaTable(context) },
    inputs: { blocks: provenance.length === 0 ? [] : inputsTable(context) },
  };
  return [{ values, charts: {} }];
}
