import { nearestName } from '../problem/nearest-name.js';
import * as say from '../problem/study-messages.js';
import type { Report } from '../problem/trouble.js';
import { studyFields } from '../study/fields.js';
import type { TriedChange } from '../study/study.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { criterionChanges } from './criteria-changes.js';
import { candidateColumnNames } from './read-candidates.js';
import type { Cell, Row, Table } from './table.js';

/** A value to try instead of what the files say: an item of study.csv, or `id.column`. */
export interface Change {
  item: string;
  value: string;
}

/** Name under which issues of changes are listed. */
export const changesFile = '--set';

/** The tables in which changes are made. */
export interface ChangeableTables {
  items: Map<string, Cell> | null;
  candidates: Table[];
  packs: Table | null;
  loads: Table | null;
}

/** `item=value` as typed, or already split. */
export function changeOf(typed: string | Change, report: Report): Change | null {
  if (typeof typed !== 'string') return typed;
  const at = typed.indexOf('=');
  if (at > 0) return { item: typed.slice(0, at).trim(), value: typed.slice(at + 1).trim() };
  report({ file: changesFile, line: null, column: null }, say.badChange(typed));
  return null;
}

/**
 * Puts changes into the tables before they are read, so that they go through the same checks as the files.
 * @returns what each of them replaces
 */
export function applyChanges(
  changes: readonly Change[],
  tables: ChangeableTables,
  report: Report,
): TriedChange[] {
  if (changes.length === 0) return [];
  const itemNames = [...studyFields('hinge'), ...studyFields('slide')].map(({ name }) => name);
  const targets = idTargets(tables);
  return changes.flatMap(({ item, value }) => {
    const place = { file: changesFile, line: null, column: item };
    const cell: Cell = { text: value, place, unit: null };
    const target = targets.get(item);
    const cells = itemNames.includes(item) ? tables.items : (target?.row.cells as Map<string, Cell>);
    const key = target?.column ?? item;
    if (!cells) {
      if (!itemNames.includes(item))
        report(place, say.unknownChange(item, nearestTarget(item, [...itemNames, ...targets.keys()])));
      return [];
    }
    const before = cells.get(key);
    cells.set(key, cell);
    return [{ item, from: asWritten(before), to: value }];
  });
}

/** A cell with the unit that its column head or unit column gives it. */
function asWritten(cell: Cell | undefined): string {
  const text = cell?.text.trim() ?? '';
  return /^[-\d.,]+$/.test(text) ? `${text} ${cell?.unit?.text ?? ''}`.trim() : text;
}

/** The name that was meant: also of one with its file in front, such as `candidates.servo-a.mass`. */
function nearestTarget(item: string, figures: readonly string[]): string | null {
  const names = [...figures, ...criterionChanges];
  const bare = item.replace(/^(?:study|candidates?|packs?|loads?|criteria|criterion)(?:\.csv)?\./, '');
  return names.includes(bare) ? bare : nearestName(bare, names);
}

/** Every `id.column` that can be changed; of a repeated id, the first row. */
function idTargets({
  candidates,
  packs,
  loads,
}: ChangeableTables): Map<string, { row: Row; column: string }> {
  const targets = new Map<string, { row: Row; column: string }>();
  const add = (table: Table | null, columns: readonly string[]) => {
    for (const row of table?.rows ?? []) {
      const id = row.cells.get('id')?.text.trim() ?? '';
      if (id === '') continue;
      for (const column of columns) {
        const name = `${id}.${column}`;
        if (!targets.has(name)) targets.set(name, { row, column });
      }
    }
  };
  const withoutId = (names: readonly string[]) => names.filter((name) => name !== 'id');
  for (const table of candidates) add(table, withoutId(candidateColumnNames()));
  add(packs, withoutId(packFields.map(({ name }) => name)));
  add(loads, withoutId(loadFields.map(({ name }) => name)));
  return targets;
}
