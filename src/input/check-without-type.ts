import { leadingColumns } from '../drives/columns.js';
import { driveTypes } from '../drives/registry.js';
import type { Issue } from '../problem/issue.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { issueCollector } from './issue-collector.js';
import { RowReading } from './row-reading.js';
import type { Row, Table } from './table.js';

/**
 * Checks the cells of a candidate whose type could not be read, so that its other mistakes show in the same run. A cell
 * is wrong when no type could read it; blanks are left alone, but for what every type requires.
 * @param absent required columns that the file lacks; they are told already
 */
export function checkWithoutType(row: Row, table: Table, absent: readonly string[], report: Report): void {
  const types = Object.values(driveTypes).map(({ columns }) => columns.slice(leadingColumns.length));
  for (const name of new Set(types.flatMap((columns) => columns.map((column) => column.name)))) {
    const known = types.flatMap((columns) => columns.filter((column) => column.name === name));
    const isRequired =
      known.length === types.length && known.every(({ presence }) => presence === 'required');
    const tries = known.map((column) => {
      const field: FieldDeclaration = isRequired ? column : { ...column, presence: 'optional' };
      return errorsOf(field, row, table, absent);
    });
    if (tries.some((errors) => errors.length === 0)) continue;
    for (const { file, line, column, ...trouble } of tries[0]!) report({ file, line, column }, trouble);
  }
}

function errorsOf(field: FieldDeclaration, row: Row, table: Table, absent: readonly string[]): Issue[] {
  const { issues, report } = issueCollector();
  new RowReading(null, '', row.place, report).read([field], row.cells, table.style, undefined, absent);
  return issues.filter(({ severity }) => severity === 'error');
}
