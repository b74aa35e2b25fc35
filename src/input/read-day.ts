import * as say from '../problem/study-messages.js';
import { duplicateId } from '../problem/table-messages.js';
import type { Report } from '../problem/trouble.js';
import { type FieldDeclaration, quantity } from '../quantity/field.js';
import { halfWidth95 } from '../quantity/quantile.js';
import type { Spread } from '../quantity/spread.js';
import type { MeasuredQuantity, Measurement } from '../study/choosing.js';
import { measuredDimensions, measuredFields, measuredHabits } from '../study/choosing-fields.js';
import type { Provenance } from '../study/provenance.js';
import type { DayBlock } from '../study/show.js';
import { dayFields } from '../study/show-fields.js';
import type { Assumptions } from './read-assumptions.js';
import { readCell } from './read-cell.js';
import { RowReading } from './row-reading.js';
import { type Cell, type Row, requireColumns, type Table } from './table.js';

const requiredNames = (fields: typeof dayFields) =>
  fields.filter(({ presence }) => presence === 'required').map(({ name }) => name);

/** Reads day.csv: the blocks of the event day in order. */
export function readDay(table: Table, assumptions: Assumptions, report: Report): DayBlock[] {
  const absent = requireColumns(table, requiredNames(dayFields), report);
  return table.rows.map((row) => {
    const reading = new RowReading(null, '', row.place, report);
    reading.read(dayFields, row.cells, table.style, undefined, absent);
    for (const field of dayFields) {
      if (field.default !== null) reading.assume(field, assumptions.of('day', 'any', field.name));
    }
    return { ...Object.fromEntries(reading.values), note: reading.text('note') ?? '' } as unknown as DayBlock;
  });
}

/** Measurements with the history of each value. */
export interface MeasuredReading {
  measured: Measurement[];
  provenance: Provenance[];
}

/** Reads measured.csv; a reading without a spread takes the one of the table of assumptions. */
export function readMeasured(table: Table, assumptions: Assumptions, report: Report): MeasuredReading {
  const absent = requireColumns(table, requiredNames(measuredFields), report);
  const result: MeasuredReading = { measured: [], provenance: [] };
  const lines = new Map<string, number>();
  for (const row of table.rows) {
    const lead = new RowReading(null, '', row.place, report);
    const measured = lead.readOne(
      measuredFields[0]!,
      row.cells,
      table.style,
      absent,
    ) as MeasuredQuantity | null;
    if (measured === null) continue;
    const first = lines.get(measured);
    if (first !== undefined) report({ ...row.place, column: 'quantity' }, duplicateId(measured, first));
    lines.set(measured, row.place.line!);
    const reading = readValueOf(measured, row, table, assumptions, absent, report);
    const value = reading.number('value');
    if (value === null) continue;
    const history = reading.provenance.get('value')!;
    const note = row.cells.get('note')?.text ?? '';
    result.measured.push({ quantity: measured, value, halfWidth: halfWidth95(history.spread, value), note });
    result.provenance.push(history);
  }
  return result;
}

function readValueOf(
  measured: MeasuredQuantity,
  row: Row,
  table: Table,
  assumptions: Assumptions,
  absent: readonly string[],
  report: Report,
): RowReading {
  const dimension = measuredDimensions[measured];
  const declared = measuredFields.find(({ name }) => name === 'value')!;
  const { meaning, how } = declared;
  const habit = measuredHabits[measured];
  const told = habit === undefined ? { meaning, how } : { meaning, how, habitual: habit };
  const field = { ...quantity('value', 'value', dimension, told), presence: declared.presence };
  const reading = new RowReading(measured, `measured.${measured}.`, row.place, report);
  const unit = row.cells.get('unit');
  const value = row.cells.get('value');
  if (value === undefined) {
    reading.read([field], row.cells, table.style, undefined, absent);
    return reading;
  }
  const cell = unit === undefined ? value : { ...value, unit: { text: unit.text.trim(), place: unit.place } };
  reading.read([field], new Map([['value', cell]]), table.style);
  const history = reading.provenance.get('value');
  if (history !== undefined && history.spread === null) {
    const spread = assumptions.of('measured', 'any', 'spread');
    history.spread = defaultSpread(cell, field, table, spread.value as number);
    history.basis = `spread: ${spread.written}, ${spread.basis}`;
  }
  return reading;
}

/** A share of the reading in the unit in which it was written: 5 % of 45 °C is 2.25 K. */
function defaultSpread(cell: Cell, field: FieldDeclaration, table: Table, share: number): Spread | null {
  const text = `${cell.text.trim()} ±${Number((share * 100).toPrecision(6))}%`;
  const reading = readCell(field, { ...cell, text }, table.style, () => {});
  return reading.state === 'given' ? reading.spread : null;
}

/** Measurements belong to the baseline: without one they mean nothing. */
export function checkMeasuredBaseline(table: Table, baselineId: string | null, report: Report): void {
  if (baselineId === null)
    report({ file: table.file, line: null, column: null }, say.measuredWithoutBaseline());
}
