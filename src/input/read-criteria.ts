import * as say from '../problem/criteria-messages.js';
import type { Report } from '../problem/trouble.js';
import { type FieldDeclaration, quantity } from '../quantity/field.js';
import { formatQuantity } from '../quantity/format.js';
import type { Criterion, CriterionId } from '../study/choosing.js';
import { type CriterionFacts, criterionFacts, criterionFields } from '../study/choosing-fields.js';
import { type Scale, scaleOf } from './criterion-scale.js';
import type { Assumptions } from './read-assumptions.js';
import { readLimit } from './read-limit.js';
import { RowReading } from './row-reading.js';
import { type Row, requireColumns, type Table } from './table.js';

/** Reads criteria.csv; blank scales take fixed ones, stated in the note. */
export function readCriteria(
  table: Table,
  targetRuntimeS: number | null,
  assumptions: Assumptions,
  report: Report,
): Criterion[] {
  const absent = requireColumns(table, ['criterion'], report);
  const lines = new Map<string, number>();
  const criteria = table.rows.flatMap((row) => {
    const reading = new RowReading(null, '', row.place, report);
    reading.read(criterionFields.slice(0, 2), row.cells, table.style, undefined, absent);
    const id = reading.text('id') as CriterionId | null;
    if (id === null) return [];
    const first = lines.get(id);
    if (first !== undefined) {
      report(reading.at('criterion'), say.criterionTwice(id, first));
      return [];
    }
    lines.set(id, row.place.line!);
    return [criterionOf(id, reading, row, table, scaleOf(id, targetRuntimeS, assumptions))];
  });
  if (criteria.length > 0 && criteria.every(({ weightScore }) => weightScore === 0))
    report({ file: table.file, line: null, column: 'weight' }, say.noWeight());
  return criteria;
}

function criterionOf(
  id: CriterionId,
  reading: RowReading,
  row: Row,
  table: Table,
  usual: Scale | null,
): Criterion {
  const facts = criterionFacts[id];
  const { report } = reading;
  const scale = facts.dimension === null ? null : readScale(id, facts, reading, row, table);
  if (facts.dimension === null) {
    for (const column of ['worth_0_at', 'worth_1_at']) {
      const cell = row.cells.get(column);
      if (cell !== undefined) report(cell.place, say.scaleNotUsed(id, column, cell.text));
    }
  }
  const must = readLimit(id, row.cells.get('must'), table.style, report);
  const weightScore = reading.number('weightScore') ?? 0;
  if (weightScore === 0 && must === null && !reading.failed.has('weightScore') && !row.cells.has('must'))
    report(reading.at('weight'), say.countsForNothing(id));
  const note = row.cells.get('note')?.text ?? '';
  const taken = scale ?? (weightScore > 0 ? usual : null);
  return {
    id,
    weightScore,
    worthless: taken?.worthless ?? null,
    worthFull: taken?.worthFull ?? null,
    must,
    origin: 'given',
    note:
      scale === null && taken !== null ? [note, taken.note].filter((text) => text !== '').join('; ') : note,
  };
}

/** The scale as written; null when both ends are blank or one could not be read. */
function readScale(
  id: CriterionId,
  facts: CriterionFacts,
  reading: RowReading,
  row: Row,
  table: Table,
): Scale | null {
  const end = (name: string, property: string): FieldDeclaration => ({
    ...quantity(name, property, facts.dimension!, { meaning: facts.meaning, how: '' }),
    habitualUnit: facts.habitualUnit,
  });
  reading.read([end('worth_0_at', 'worthless'), end('worth_1_at', 'worthFull')], row.cells, table.style);
  const worthless = reading.number('worthless');
  const worthFull = reading.number('worthFull');
  if (reading.failed.has('worthless') || reading.failed.has('worthFull')) return null;
  if (worthless === null && worthFull === null) return null;
  if (worthless === null || worthFull === null) {
    const missing = worthless === null ? 'worth_0_at' : 'worth_1_at';
    reading.report(reading.at(missing), say.worthIncomplete(id, missing));
    return null;
  }
  if (worthless === worthFull) {
    const shown = formatQuantity(worthFull, facts.dimension!);
    reading.report(reading.at('worth_1_at'), say.worthFlat(id, shown));
    return null;
  }
  const rises = worthFull > worthless;
  if (rises !== (facts.direction === 'at-least')) {
    const better = facts.direction === 'at-least' ? 'more' : 'less';
    const shown = formatQuantity(worthFull, facts.dimension!);
    reading.report(reading.at('worth_1_at'), say.worthAgainstDirection(id, shown, better));
  }
  return { worthless, worthFull, note: '' };
}
