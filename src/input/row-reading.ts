import type { Place } from '../problem/issue.js';
import { blankRequired } from '../problem/table-messages.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { formatWithSpread } from '../quantity/format.js';
import type { NumberStyle } from '../quantity/number-text.js';
import type { Spread } from '../quantity/spread.js';
import type { Provenance } from '../study/provenance.js';
import type { Assumption } from './read-assumptions.js';
import { formatSi, type GivenValue, readCell } from './read-cell.js';
import type { Cell } from './table.js';

/** What a property of a row can hold: SI number, text, choice, yes or no, or not known. */
export type PropertyValue = number | string | boolean | null;

/** Spreads that apply where a given figure states none: `stall_effort` of a listing, say. */
export type DefaultSpread = (group: string) => Assumption | null;

/** One row (or study.csv as a whole) being read: values by property, each with its history. */
export class RowReading {
  readonly values = new Map<string, PropertyValue>();
  readonly provenance = new Map<string, Provenance>();
  /** Properties whose cells could not be read; they have been reported. */
  readonly failed = new Set<string>();

  /**
   * @param owner - id of the candidate, pack or load; null for the study itself
   * @param pathPrefix - leads to the object in the study: `candidates.worm-a.sheet.`
   * @param place - the row
   * @param report - takes every trouble with its place
   */
  constructor(
    readonly owner: string | null,
    readonly pathPrefix: string,
    readonly place: Place,
    readonly report: Report,
  ) {}

  /**
   * Reads the cells of some fields; blanks stay null, blank required ones are reported.
   *
   * @param absent - columns that the header lacks, which has been reported for the whole file
   */
  read(
    fields: readonly FieldDeclaration[],
    cells: ReadonlyMap<string, Cell>,
    style: NumberStyle,
    spreads: DefaultSpread = () => null,
    absent: readonly string[] = [],
  ): void {
    for (const field of fields) {
      const cell = cells.get(field.name);
      const reading = readCell(field, cell, style, this.report);
      if (reading.state === 'given') this.give(field, reading, cell!.place, spreads);
      else this.values.set(field.property, null);
      if (reading.state === 'failed') this.failed.add(field.property);
      if (reading.state !== 'blank' || field.presence !== 'required') continue;
      if (absent.includes(field.name)) this.failed.add(field.property);
      else this.missing(field);
    }
  }

  /** Reads one field and gives its value; null when it is blank or could not be read. */
  readOne(
    field: FieldDeclaration,
    cells: ReadonlyMap<string, Cell>,
    style: NumberStyle,
    absent: readonly string[] = [],
  ): PropertyValue {
    this.read([field], cells, style, undefined, absent);
    return this.values.get(field.property) ?? null;
  }

  /** Replaces the spread of an assumed value by that of another row; a given value keeps its own. */
  widen(property: string, range: Assumption): void {
    const history = this.provenance.get(property);
    if (history?.origin === 'assumed') history.spread = range.spread;
  }

  /** Drops the history of an assumed value that another choice makes idle; it is nobody's guess then. */
  idle(property: string): void {
    if (this.provenance.get(property)?.origin === 'assumed') this.provenance.delete(property);
  }

  /** Takes a value that another choice leaves no doubt about; what was given or assumed instead is nobody's figure. */
  settle(property: string, value: PropertyValue): void {
    this.values.set(property, value);
    this.provenance.delete(property);
  }

  /** Reports a blank that must not be. */
  missing(field: FieldDeclaration): void {
    this.failed.add(field.property);
    this.report({ ...this.place, column: field.name }, blankRequired(field.name, field.meaning, field.how));
  }

  private give(field: FieldDeclaration, reading: GivenValue, place: Place, spreads: DefaultSpread): void {
    const usual = reading.spread === null && field.spreadGroup !== null ? spreads(field.spreadGroup) : null;
    const spread = usual === null ? reading.spread : scaled(usual.spread, reading.value as number);
    this.enter(field, reading.value, spread, {
      origin: 'given',
      written: reading.written,
      basis: usual === null ? '' : `spread: ${usual.written} times the figure, ${usual.basis}`,
      place,
    });
  }

  /** Takes a default where the cell was blank; does nothing where there is a value or a reported trouble. */
  assume(field: FieldDeclaration, assumption: Assumption): void {
    if (!this.isBlank(field.property)) return;
    this.enter(field, assumption.value, assumption.spread, {
      origin: 'assumed',
      written: null,
      basis: assumption.basis,
      place: null,
    });
  }

  /** Enters a value that follows from others where the cell was blank. */
  derive(
    field: FieldDeclaration,
    value: PropertyValue,
    basis: string,
    origin: 'derived' | 'assumed' = 'derived',
  ): void {
    if (!this.isBlank(field.property)) return;
    this.enter(field, value, null, { origin, written: null, basis, place: null });
  }

  isBlank(property: string): boolean {
    return !this.failed.has(property) && (this.values.get(property) ?? null) === null;
  }

  number(property: string): number | null {
    const value = this.values.get(property);
    return typeof value === 'number' ? value : null;
  }

  text(property: string): string | null {
    const value = this.values.get(property);
    return typeof value === 'string' ? value : null;
  }

  /** Place of a column in this row, whether or not it has a cell. */
  at(column: string): Place {
    return { ...this.place, column };
  }

  private enter(
    field: FieldDeclaration,
    value: PropertyValue,
    spread: Spread | null,
    history: Pick<Provenance, 'origin' | 'written' | 'basis' | 'place'>,
  ): void {
    this.values.set(field.property, value);
    this.provenance.set(field.property, {
      path: this.pathPrefix + field.property,
      field: field.name,
      owner: this.owner,
      shown: shownAs(field, value, spread),
      value,
      spread,
      ...history,
    });
  }
}

/** A spread of factors about 1 applied to a figure; zero stays exact, a negative figure turns the ends round. */
export function scaled(spread: Spread | null, figure: number): Spread | null {
  if (spread === null || spread.shape === 'exact') return spread;
  if (figure === 0) return { shape: 'exact' };
  if (spread.shape === 'normal') return { shape: 'normal', halfWidth: spread.halfWidth * Math.abs(figure) };
  const [low, high] = [spread.low * figure, spread.high * figure].sort((a, b) => a - b) as [number, number];
  return spread.shape === 'uniform'
    ? { shape: 'uniform', low, high }
    : { shape: 'triangular', low, mode: spread.mode * figure, high };
}

function shownAs(field: FieldDeclaration, value: PropertyValue, spread: Spread | null): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'number') return value ?? '';
  if (field.dimension === null) return String(value);
  return spread === null
    ? formatSi(value, field)
    : formatWithSpread(value, spread, field.dimension, field.displayUnit ?? undefined);
}
