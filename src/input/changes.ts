import { nearestName } from '../problem/nearest-name.js';
import * as say from '../problem/study-messages.js';
import type { Report } from '../problem/trouble.js';
import { studyFields } from '../study/fields.js';
import { loadFields, packFields } from '../study/supply-fields.js';
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

/** Puts changes into the tables before they are read, so that they go through the same checks as the files. */
export function applyChanges(changes: readonly Change[], tables: ChangeableTables, report: Report): void {
  if (changes.length === 0) return;
  const itemNames = [...studyFields('hinge'), ...studyFields('slide')].map(({ name }) => name);
  const targets = idTargets(tables);
  for (const { item, value } of changes) {
    const place = { file: changesFile, line: null, column: item };
    const cell: Cell = { text: value, place, unit: null };
    if (itemNames.includes(item)) {
      tables.items?.set(item, cell);
      continue;
    }
    const target = targets.get(item);
    if (target !== undefined) (target.row.cells as Map<string, Cell>).set(target.column, cell);
    else report(place, say.unknownChange(item, nearestName(item, [...itemNames, ...targets.keys()])));
  }
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
