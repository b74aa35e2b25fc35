import { nearestName } from '../problem/nearest-name.js';
import * as say from '../problem/study-messages.js';
import { notApplicable } from '../problem/table-messages.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import type { FeatureKind } from '../study/feature.js';
import { studyFields } from '../study/fields.js';
import { applyFeatureRules, applySurroundingsRules, applyWiringRules } from './item-rules.js';
import type { Assumptions } from './read-assumptions.js';
import { readCell } from './read-cell.js';
import { RowReading } from './row-reading.js';
import type { Cell, Table } from './table.js';

/** study.csv, read: the kind of feature and every item by its path in the study. */
export interface ItemsReading {
  kind: FeatureKind;
  items: RowReading;
  cells: ReadonlyMap<string, Cell>;
}

/** The cells of study.csv by item; a unit column goes with each. Repeated and nameless rows are reported. */
export function itemCells(table: Table, report: Report): Map<string, Cell> {
  const cells = new Map<string, Cell>();
  for (const { place, cells: row } of table.rows) {
    const item = row.get('item')?.text.trim() ?? '';
    const value = row.get('value');
    if (item === '') {
      if (value !== undefined) report({ ...place, column: 'item' }, say.valueWithoutItem(value.text));
      continue;
    }
    const itemPlace = { ...place, column: item };
    const before = cells.get(item);
    if (before !== undefined) {
      report(itemPlace, say.duplicateItem(item, before.place.line));
      continue;
    }
    const unit = row.get('unit');
    cells.set(item, {
      text: value?.text ?? '',
      place: itemPlace,
      unit: unit === undefined ? (value?.unit ?? null) : { text: unit.text.trim(), place: itemPlace },
    });
  }
  return cells;
}

/**
 * Reads the items of study.csv, takes what is assumed when blank and checks what single items cannot show.
 *
 * @param table - study.csv
 * @param cells - its cells by item, changes applied
 */
export function readItems(
  table: Table,
  cells: ReadonlyMap<string, Cell>,
  assumptions: Assumptions,
  report: Report,
): ItemsReading {
  const kind = featureKind(table, cells);
  const fields = itemFields(kind, cells);
  reportStrangers(kind, cells, report);
  const place = { file: table.file, line: null, column: null };
  const items = new RowReading(null, '', place, report);
  items.read(fields, cells, table.style, (group) => assumptions.of('spread', ...splitGroup(group)));
  for (const field of fields) {
    if (field.default !== null) items.assume(field, defaultOf(kind, field, assumptions));
  }
  const byName = new Map(fields.map((field) => [field.name, field]));
  const context = { items, fields: byName, assumptions, report };
  applyFeatureRules(kind, context);
  applySurroundingsRules(context);
  applyWiringRules(context);
  return { kind, items, cells };
}

function featureKind(table: Table, cells: ReadonlyMap<string, Cell>): FeatureKind {
  const field = studyFields('hinge').find(({ name }) => name === 'feature.kind')!;
  const reading = readCell(field, cells.get('feature.kind'), table.style, () => {});
  return reading.state === 'given' ? (reading.value as FeatureKind) : 'hinge';
}

/** The items of this kind of feature; with a scale under the tip the balance distance may stay blank. */
function itemFields(kind: FeatureKind, cells: ReadonlyMap<string, Cell>): FieldDeclaration[] {
  const scale = (cells.get('feature.tip_scale')?.text ?? '').trim() !== '';
  return studyFields(kind).map((field) =>
    scale && field.name === 'feature.balance_distance' ? { ...field, presence: 'optional' } : field,
  );
}

function reportStrangers(kind: FeatureKind, cells: ReadonlyMap<string, Cell>, report: Report): void {
  const names = studyFields(kind).map(({ name }) => name);
  const others = studyFields(kind === 'hinge' ? 'slide' : 'hinge').map(({ name }) => name);
  for (const [item, cell] of cells) {
    if (names.includes(item)) continue;
    if (!others.includes(item)) report(cell.place, say.unknownItem(item, nearestName(item, names)));
    else if (cell.text.trim() !== '') report(cell.place, notApplicable(item, cell.text, `a ${kind}`));
  }
}

function defaultOf(kind: FeatureKind, field: FieldDeclaration, assumptions: Assumptions) {
  const otherKind = studyFields(kind === 'hinge' ? 'slide' : 'hinge');
  const shared = otherKind.some(({ name, default: value }) => name === field.name && value === field.default);
  return assumptions.of('study', shared ? 'any' : kind, field.name);
}

function splitGroup(group: string): [string, string] {
  const [name, item] = group.split('.');
  return [name!, item!];
}
