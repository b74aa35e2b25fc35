import { leadingColumns, ratedProperties } from '../drives/columns.js';
import { driveTypes } from '../drives/registry.js';
import type { DriveKind, DriveSheet, RatedFigures } from '../drives/sheet.js';
import { differsFromFirstRow } from '../problem/drive-messages.js';
import { duplicateId, notApplicable } from '../problem/table-messages.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import type { FeatureKind } from '../study/feature.js';
import type { Provenance } from '../study/provenance.js';
import type { Candidate } from '../study/study.js';
import { checkWithoutType } from './check-without-type.js';
import { neutralSheet } from './neutral-sheet.js';
import type { Assumptions } from './read-assumptions.js';
import { readCell } from './read-cell.js';
import { RowReading } from './row-reading.js';
import { applySheetRules, checkRatedFigures } from './sheet-rules.js';
import { ownColumns, type Row, requireColumns, type Table } from './table.js';
import { typicalFigures } from './typical-figures.js';

/** The candidates as far as they could be read, with the history of every value. */
export interface CandidatesReading {
  candidates: Candidate[];
  provenance: Provenance[];
  /** Ids of all rows, readable or not. */
  ids: string[];
}

/** What the reading of candidates takes from study.csv. */
export interface CandidatesContext {
  kind: FeatureKind;
  baselineId: string | null;
  assumptions: Assumptions;
  report: Report;
}

let columnNames: readonly string[] | null = null;

/** Every column that some drive type has, for the header of a candidates file. */
export function candidateColumnNames(): readonly string[] {
  columnNames ??= [
    ...new Set(Object.values(driveTypes).flatMap(({ columns }) => columns.map(({ name }) => name))),
  ];
  return columnNames;
}

/** Columns that every type requires. */
const requiredByAll = (): string[] => {
  const required = Object.values(driveTypes).map(({ columns }) =>
    columns.filter(({ presence }) => presence === 'required').map(({ name }) => name),
  );
  return required[0]!.filter((name) => required.every((names) => names.includes(name)));
};

/** Reads the rows of all candidates files; a row may repeat an id at another rated voltage. */
export function readCandidates(tables: readonly Table[], context: CandidatesContext): CandidatesReading {
  const reader = new CandidatesReader(context);
  for (const table of tables) {
    const absent = requireColumns(table, requiredByAll(), context.report);
    for (const row of table.rows) reader.read(row, table, absent);
  }
  return reader.result();
}

/** What a row is called; null where that could not be read. */
interface Lead {
  id: string | null;
  label: string | null;
}

interface Entry {
  candidate: Candidate;
  row: Row;
  columns: readonly FieldDeclaration[];
  readings: RowReading[];
}

class CandidatesReader {
  private readonly entries = new Map<string, Entry | { row: Row }>();
  private readonly provenance: Provenance[] = [];

  constructor(private readonly context: CandidatesContext) {}

  read(row: Row, table: Table, absent: readonly string[]): void {
    const { report } = this.context;
    const lead = new RowReading(null, '', row.place, report);
    const id = lead.readOne(leadingColumns[0]!, row.cells, table.style, absent);
    const before = id === null ? undefined : this.entries.get(id as string);
    if (before !== undefined) {
      this.readAgain(id as string, before, row, table);
      return;
    }
    const kind = lead.readOne(leadingColumns[2]!, row.cells, table.style, absent);
    const label = lead.readOne(leadingColumns[1]!, row.cells, table.style) ?? id;
    if (id !== null) this.entries.set(id as string, { row });
    if (kind !== null) this.readFirst({ id, label } as Lead, kind as DriveKind, row, table, absent);
    else checkWithoutType(row, table, absent, report);
  }

  private readFirst(
    { id, label }: Lead,
    kind: DriveKind,
    row: Row,
    table: Table,
    absent: readonly string[],
  ): void {
    const { report, assumptions } = this.context;
    const columns = driveTypes[kind].columns.slice(leadingColumns.length);
    this.reportStrangers(kind, row);
    const reading = new RowReading(id, `candidates.${id}.sheet.`, row.place, report);
    reading.read(columns, row.cells, table.style, this.spreads(columns, row, table), absent);
    for (const column of columns) {
      if (column.default === null) continue;
      reading.assume(column, assumptions.of('drive', kind, column.name));
      const range = assumptions.find('drive', kind, `${column.name}_range`);
      if (range !== null) reading.widen(column.property, range);
    }
    const isBaseline = id !== null && id === this.context.baselineId;
    applySheetRules({ reading, columns, kind, feature: this.context.kind, isBaseline, assumptions, report });
    if (id === null) return;
    const typical = typicalFigures(id, kind, reading, assumptions);
    const sheet = { ...neutralSheet, otherVoltages: [], ...withoutNullOverrides(reading) };
    const { file, line } = row.place;
    const candidate = {
      id,
      kind,
      label: label!,
      sheet,
      typical: typical.figures,
      extra: ownColumns(row),
      line: line!,
      file,
    };
    this.entries.set(id, { candidate, row, columns, readings: [reading] });
    this.provenance.push(...reading.provenance.values(), ...typical.provenance);
  }

  /** A further row of the same id: the same drive at another voltage, or an id used twice. */
  private readAgain(id: string, before: Entry | { row: Row }, row: Row, table: Table): void {
    const { report } = this.context;
    if (!('candidate' in before)) {
      report({ ...row.place, column: 'id' }, duplicateId(id, before.row.place.line!));
      return;
    }
    const { candidate, columns } = before;
    const index = candidate.sheet.otherVoltages.length;
    const reading = new RowReading(id, `candidates.${id}.sheet.otherVoltages.${index}.`, row.place, report);
    const rated = columns.filter(({ property }) => ratedProperties.includes(property));
    reading.read(rated, row.cells, table.style, this.spreads(columns, before.row, table));
    const voltages = [candidate.sheet, ...candidate.sheet.otherVoltages].map(
      (figures) => figures.ratedVoltageV,
    );
    const voltage = reading.number('ratedVoltageV');
    if (voltage !== null && voltages.includes(voltage)) {
      report({ ...row.place, column: 'id' }, duplicateId(id, before.row.place.line!));
      return;
    }
    checkRatedFigures(reading, rated);
    this.reportDifferences(before, row, rated);
    candidate.sheet.otherVoltages.push(Object.fromEntries(reading.values) as unknown as RatedFigures);
    this.provenance.push(...reading.provenance.values());
  }

  private reportDifferences({ row: first }: Entry, row: Row, rated: readonly FieldDeclaration[]): void {
    for (const [name, cell] of row.cells) {
      if (name === 'id' || rated.some((column) => column.name === name)) continue;
      const before = first.cells.get(name)?.text.trim() ?? '';
      if (cell.text.trim() !== before)
        this.context.report(cell.place, differsFromFirstRow(name, cell.text, before, first.place.line!));
    }
  }

  private reportStrangers(kind: DriveKind, row: Row): void {
    const names = driveTypes[kind].columns.map(({ name }) => name);
    for (const [name, cell] of row.cells) {
      if (names.includes(name) || name.startsWith('my_') || !candidateColumnNames().includes(name)) continue;
      this.context.report(cell.place, notApplicable(name, cell.text, `a ${kind}`));
    }
  }

  /** Default spreads by where the row says its figures come from. */
  private spreads(columns: readonly FieldDeclaration[], row: Row, table: Table) {
    const field = columns.find(({ name }) => name === 'figures_from')!;
    const reading = readCell(field, row.cells.get('figures_from'), table.style, () => {});
    const origin = reading.state === 'given' ? String(reading.value) : field.default!;
    return (group: string) => this.context.assumptions.of('spread', origin, group);
  }

  result(): CandidatesReading {
    const entries = [...this.entries.values()].filter((entry): entry is Entry => 'candidate' in entry);
    return {
      candidates: entries.map(({ candidate }) => candidate),
      provenance: this.provenance,
      ids: [...this.entries.keys()],
    };
  }
}

/** The values of a sheet; texts that are blank keep the neutral sheet's empty text. */
function withoutNullOverrides(reading: RowReading): Partial<DriveSheet> {
  const isText = (property: string) => ['source', 'sourceDate', 'note'].includes(property);
  const known = [...reading.values].filter(([property, value]) => value !== null || !isText(property));
  return Object.fromEntries(known) as Partial<DriveSheet>;
}
