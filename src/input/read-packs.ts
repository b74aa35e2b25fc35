import * as say from '../problem/supply-messages.js';
import { duplicateId } from '../problem/table-messages.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { formatValue } from '../quantity/format.js';
import type { Provenance } from '../study/provenance.js';
import type { Chemistry, ChemistryId, Load, Pack } from '../study/supply.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { chemistryHistory, chemistryOf } from './chemistry.js';
import type { Assumptions } from './read-assumptions.js';
import { RowReading } from './row-reading.js';
import { type Row, requireColumns, type Table } from './table.js';

/** Rows of packs.csv or loads.csv that could be read, with the history of every value. */
export interface RowsReading<T> {
  entries: T[];
  /** By id, so that the history of the chosen pack can be told apart. */
  provenance: Map<string, Provenance[]>;
  /** Ids of all rows, readable or not. */
  ids: string[];
}

/** Reads packs.csv. */
export function readPacks(table: Table, assumptions: Assumptions, report: Report): RowsReading<Pack> {
  const field = (name: string) => packFields.find((entry) => entry.name === name)!;
  const build = (reading: RowReading, provenance: Provenance[]) => {
    const id = reading.text('chemistry') as ChemistryId | null;
    if (id === null) return null;
    const chemistry = chemistryOf(id, assumptions);
    const cutOff = assumptions.of('chemistry', id, 'cut_off_voltage');
    reading.assume(field('cut_off'), { ...cutOff, basis: `usual for ${id}` });
    const above = assumptions.of('pack', 'any', 'warning_above_cut_off');
    const cutOffV = reading.number('cutOffVoltageV');
    if (cutOffV !== null) {
      const basis = `${above.written} above the cut-off`;
      reading.derive(field('warning'), cutOffV + (above.value as number), basis, 'assumed');
    }
    checkVoltages(reading, chemistry, report);
    provenance.push(...chemistryHistory(id, reading, assumptions));
    return { ...valuesOf(reading), chemistry } as unknown as Pack;
  };
  return readRows(table, { group: 'pack', fields: packFields, build }, assumptions, report);
}

/** Cut-off and warning are voltages of one cell: below its full voltage, the warning first. */
function checkVoltages(reading: RowReading, chemistry: Chemistry, report: Report): void {
  const cutOffV = reading.number('cutOffVoltageV');
  const warningV = reading.number('warningVoltageV');
  if (cutOffV === null || warningV === null) return;
  if (cutOffV >= chemistry.fullVoltageV)
    report(
      reading.at('cut_off'),
      say.cutOffAboveFull(formatValue(cutOffV, 'V'), formatValue(chemistry.fullVoltageV, 'V')),
    );
  else if (warningV < cutOffV)
    report(
      reading.at('warning'),
      say.warningBelowCutOff(formatValue(warningV, 'V'), formatValue(cutOffV, 'V')),
    );
}

/** Reads loads.csv. */
export function readLoads(table: Table, assumptions: Assumptions, report: Report): RowsReading<Load> {
  const voltage = loadFields.find(({ name }) => name === 'voltage')!;
  const build = (reading: RowReading, provenance: Provenance[]) => {
    if (reading.isBlank('converterEfficiency')) {
      // Without a converter the current follows from the voltage.
      if (reading.isBlank('voltageV')) reading.missing(voltage);
      else provenance.push(linearRegulator(reading));
    }
    return valuesOf(reading) as unknown as Load;
  };
  return readRows(table, { group: 'load', fields: loadFields, build }, assumptions, report);
}

/** How the rows of one file are read. */
interface RowKind<T> {
  group: 'pack' | 'load';
  fields: readonly FieldDeclaration[];
  /** Makes an entry of a row; null when it cannot. More history may be added. */
  build(reading: RowReading, provenance: Provenance[]): T | null;
}

/** What a load without a converter is taken to have, so that it stands among what was assumed. */
function linearRegulator({ pathPrefix, owner }: RowReading): Provenance {
  return {
    path: `${pathPrefix}converterEfficiency`,
    field: 'converter_efficiency',
    owner,
    origin: 'assumed',
    written: null,
    shown: 'linear regulator',
    value: null,
    basis:
      'no converter named: the pack gives the current that the load draws at its own voltage, and the rest of the voltage is heat',
    spread: null,
    place: null,
  };
}

function readRows<T>(
  table: Table,
  { group, fields, build }: RowKind<T>,
  assumptions: Assumptions,
  report: Report,
): RowsReading<T> {
  const required = fields.filter(({ presence }) => presence === 'required').map(({ name }) => name);
  const absent = requireColumns(table, required, report);
  const lines = new Map<string, number>();
  const result: RowsReading<T> = { entries: [], provenance: new Map(), ids: [] };
  const [idField, ...otherFields] = fields;
  for (const row of table.rows) {
    const own = new RowReading(null, '', row.place, report);
    const id = own.readOne(idField!, row.cells, table.style, absent) as string | null;
    if (id !== null) {
      const first = lines.get(id);
      if (first !== undefined) {
        report({ ...row.place, column: 'id' }, duplicateId(id, first));
        continue;
      }
      lines.set(id, row.place.line!);
      result.ids.push(id);
    }
    const reading = new RowReading(id, `${group}s.${id}.`, row.place, report);
    reading.read(otherFields, row.cells, table.style, spreadsOf(row, assumptions), absent);
    if (reading.text('label') === null) reading.values.set('label', id);
    takeDefaults(reading, fields, group, assumptions);
    const provenance: Provenance[] = [];
    const entry = build(reading, provenance);
    if (entry === null || id === null) continue;
    result.entries.push({ ...entry, id });
    result.provenance.set(id, [...reading.provenance.values(), ...provenance]);
  }
  return result;
}

/** How poorly figures from the source that a row names are known. */
function spreadsOf(row: Row, assumptions: Assumptions) {
  const origin = row.cells.get('figures_from')?.text.trim().toLowerCase() ?? 'listing';
  return (group: string) => assumptions.find('spread', origin, group);
}

function takeDefaults(
  reading: RowReading,
  fields: readonly FieldDeclaration[],
  group: 'pack' | 'load',
  assumptions: Assumptions,
): void {
  for (const field of fields) {
    if (field.default !== null) reading.assume(field, assumptions.of(group, 'any', field.name));
  }
}

/** The values as an object; a blank note is an empty text. */
function valuesOf(reading: RowReading): Record<string, unknown> {
  return { ...Object.fromEntries(reading.values), note: reading.text('note') ?? '' };
}
