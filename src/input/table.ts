import * as sayFile from '../problem/file-messages.js';
import type { Place } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { hasHiddenCharacters } from '../problem/printable.js';
import * as say from '../problem/table-messages.js';
import type { Report } from '../problem/trouble.js';
import { longestText } from '../quantity/field.js';
import { type NumberStyle, numberStyleOf } from '../quantity/number-text.js';
import { decode } from './decode.js';
import { dialectOf } from './dialect.js';
import type { InputFile } from './files.js';
import { type FileRecord, recordsOf } from './records.js';

/** A unit that stands apart from its number, with its place. */
export interface ApartUnit {
  text: string;
  place: Place;
}

/** One column of the header: `stall_torque [kg·cm]` has the name `stall_torque` and the unit `kg·cm`. */
export interface HeaderColumn {
  name: string;
  unit: ApartUnit | null;
}

/** One cell, verbatim, with its place and what the header says of its unit. */
export interface Cell {
  text: string;
  place: Place;
  /** Unit of a bare number from the header or a unit column; null when none was written. */
  unit: ApartUnit | null;
}

/** One row: its cells by column name. */
export interface Row {
  place: Place;
  cells: ReadonlyMap<string, Cell>;
}

/** A file as a table: only declared columns and the user's own are in its rows. */
export interface Table {
  file: string;
  header: readonly HeaderColumn[];
  headerLine: number;
  /** Declared columns that undeclared ones most likely mean; reported with those. */
  meantColumns: readonly string[];
  rows: readonly Row[];
  style: NumberStyle;
}

/**
 * Reads a file into a table.
 *
 * @param file - name and bytes
 * @param names - the declared columns; others must start with `my_`
 * @param report - takes every trouble with its place
 * @param mayBeEmpty - whether a file of comments, or a header without rows, counts as not there
 * @returns null when no table could be made (reported), or when an optional file says nothing
 */
export function readTable(
  file: InputFile,
  names: readonly string[],
  report: Report,
  mayBeEmpty = false,
): Table | null {
  const text = decode(file, report);
  if (text === null) return null;
  const dialect = dialectOf(text);
  const records = recordsOf(dialect.text, dialect.delimiter, file.name, report);
  if (records === null) return null;
  const [first, ...others] = records;
  const filePlace = { file: file.name, line: null, column: null };
  if (first === undefined) {
    if (!mayBeEmpty) report(filePlace, sayFile.emptyFile());
    return null;
  }
  const header = headerOf(first, file.name, names, report);
  if (others.length === 0) {
    if (!mayBeEmpty) report(filePlace, sayFile.noRows());
    return null;
  }
  const style = numberStyleOf(
    others.flatMap(({ cells }) => cells),
    dialect.delimiter !== ',',
  );
  const rows = others.map((record) => rowOf(record, header, file.name, dialect.delimiter === ',', report));
  const meantColumns = header.flatMap(({ name }) =>
    isOwnOrDeclared(name, names) ? [] : (nearestName(name, names) ?? []),
  );
  return {
    file: file.name,
    header: header.filter(isNamed),
    headerLine: first.line,
    meantColumns,
    rows,
    style,
  };
}

const isNamed = (column: HeaderColumn): boolean => column.name !== '';
const isOwnOrDeclared = (name: string, names: readonly string[]): boolean =>
  name === '' || names.includes(name) || name.startsWith('my_');

function headerOf(
  record: FileRecord,
  file: string,
  names: readonly string[],
  report: Report,
): HeaderColumn[] {
  const seen = new Set<string>();
  return record.cells.map((cell) => {
    const written = cell.trim();
    const match = /^(.*?)\s*\[([^\]]*)\]$/.exec(written);
    const name = (match?.[1] ?? written).trim();
    const place = { file, line: record.line, column: written };
    const unit = match === null ? null : { text: match[2]!.trim(), place };
    if (seen.has(name) && name !== '') report(place, say.duplicateColumn(name));
    else if (!isOwnOrDeclared(name, names))
      report(place, say.unknownColumn(written, nearestName(name, names)));
    seen.add(name);
    return { name, unit };
  });
}

function rowOf(
  record: FileRecord,
  header: readonly HeaderColumn[],
  file: string,
  commas: boolean,
  report: Report,
): Row {
  const rowPlace = { file, line: record.line, column: null };
  const cells = new Map<string, Cell>();
  record.cells.forEach((text, index) => {
    const column = header[index];
    const place = { ...rowPlace, column: column?.name || null };
    checkText(text, place, report);
    if (text.trim() === '') return;
    if (column === undefined) {
      if (index === header.length)
        report(rowPlace, say.rowTooLong(record.cells.length, header.length, text, commas));
    } else if (column.name === '') {
      report(rowPlace, say.columnWithoutName(text, index + 1));
    } else if (!cells.has(column.name)) {
      cells.set(column.name, { text, place, unit: column.unit });
    }
  });
  return { place: rowPlace, cells };
}

function checkText(text: string, place: Place, report: Report): void {
  if (text.length > longestText) report(place, sayFile.cellTooLong(text, longestText));
  else if (hasHiddenCharacters(text)) report(place, sayFile.controlCharacters(text));
}

/**
 * Reports declared columns that every row needs and the header lacks; one that a misspelt column means is left out.
 *
 * @returns the columns that are absent, reported here or with the misspelt one
 */
export function requireColumns(table: Table, required: readonly string[], report: Report): string[] {
  const have = table.header.map(({ name }) => name);
  const missing = required.filter((name) => !have.includes(name));
  for (const name of missing) {
    if (table.meantColumns.includes(name)) continue;
    report({ file: table.file, line: table.headerLine, column: name }, say.missingColumn(name));
  }
  return missing;
}

/** The user's own columns of a row: kept and printed, never read. */
export function ownColumns(row: Row): Record<string, string> {
  const own: Record<string, string> = {};
  for (const [name, cell] of row.cells) if (name.startsWith('my_')) own[name] = cell.text;
  return own;
}
