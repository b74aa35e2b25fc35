import * as say from '../problem/assumption-messages.js';
import { inFileOrder } from '../problem/format-issue.js';
import type { Issue } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { plainStyle } from '../quantity/number-text.js';
import type { Spread } from '../quantity/spread.js';
import type { AssumptionRow } from './assumption-row.js';
import { assumptionKey, assumptionRows } from './assumption-rows.js';
import { assumptionsFile } from './files.js';
import { issueCollector } from './issue-collector.js';
import { readCell } from './read-cell.js';
import { type Row, readTable, requireColumns } from './table.js';

/** A value that is taken when a file leaves it blank. */
export interface Assumption {
  value: number | string | boolean;
  spread: Spread | null;
  /** As in the table: `4..10..30 mA`. */
  written: string;
  basis: string;
}

/** Everything that is taken when blank. */
export interface Assumptions {
  /** @throws when the table has no such row: a slip in the program, never in a file */
  of(group: string, name: string, item: string): Assumption;
  /** The same where not every name has the row; null when this one has not. */
  find(group: string, name: string, item: string): Assumption | null;
  /** What was wrong with the table; reading a study reports it too. */
  issues: readonly Issue[];
}

const columns = ['group', 'name', 'item', 'value', 'basis'];

/**
 * Reads the editable table of assumptions. Rows it lacks are taken as they shipped, with a warning.
 *
 * @param templates - texts of the templates by name; without `assumptions.csv` the table is taken as it ships
 */
export function readAssumptions(templates: Readonly<Record<string, string>> = {}): Assumptions {
  const taken = new Map(assumptionRows().map((row) => [keyOf(row), shipped(row)]));
  const text = templates[assumptionsFile];
  const issues = text === undefined ? [] : readInto(taken, text);
  return {
    of(group, name, item) {
      const key = assumptionKey(group, name, item);
      const assumption = taken.get(key);
      if (assumption === undefined) throw new Error(`no assumption ${key}`);
      return assumption;
    },
    find: (group, name, item) => taken.get(assumptionKey(group, name, item)) ?? null,
    issues,
  };
}

const keyOf = ({ group, name, item }: AssumptionRow) => assumptionKey(group, name, item);

function shipped(row: AssumptionRow): Assumption {
  const place = { file: assumptionsFile, line: null, column: 'value' };
  const cell = { text: row.value, place, unit: null };
  const reading = readCell(row.field, cell, plainStyle, (_place, trouble) => {
    throw new Error(`${keyOf(row)}: ${trouble.message}`);
  });
  if (reading.state !== 'given') throw new Error(`${keyOf(row)} is blank`);
  return { value: reading.value, spread: reading.spread, written: row.value, basis: row.basis };
}

function readInto(taken: Map<string, Assumption>, text: string): Issue[] {
  const collector = issueCollector();
  const file = { name: assumptionsFile, bytes: new TextEncoder().encode(text) };
  const table = readTable(file, columns, collector.report);
  if (table !== null && requireColumns(table, columns, collector.report).length === 0) {
    const declared = new Map(assumptionRows().map((row) => [keyOf(row), row]));
    const seen = new Set<string>();
    for (const line of table.rows) {
      const key = columns
        .slice(0, 3)
        .map((column) => cellText(line, column))
        .join('/');
      const row = declared.get(key);
      const place = { ...line.place, column: 'item' };
      if (row === undefined)
        collector.report(place, say.unknownAssumption(key, nearestName(key, [...declared.keys()])));
      else if (seen.has(key)) collector.report(place, say.assumptionTwice(key));
      else taken.set(key, readRow(row, line, taken.get(key)!, table.style, collector.report));
      seen.add(key);
    }
    const missing = [...declared.keys()].filter((key) => !seen.has(key));
    const place = { file: assumptionsFile, line: null, column: null };
    for (const key of missing) collector.report(place, say.missingAssumption(key, taken.get(key)!.written));
  }
  return inFileOrder(collector.issues, [assumptionsFile]);
}

function readRow(
  row: AssumptionRow,
  line: Row,
  before: Assumption,
  style: Parameters<typeof readCell>[2],
  report: Parameters<typeof readCell>[3],
): Assumption {
  const reading = readCell(row.field, line.cells.get('value'), style, report);
  if (reading.state === 'blank')
    report({ ...line.place, column: 'value' }, say.blankAssumption(keyOf(row), row.value));
  if (reading.state !== 'given') return before;
  const basis = cellText(line, 'basis') || row.basis;
  return { value: reading.value, spread: reading.spread, written: reading.written, basis };
}

const cellText = (line: Row, column: string): string => (line.cells.get(column)?.text ?? '').trim();
