import * as say from '../problem/show-messages.js';
import type { Report } from '../problem/trouble.js';
import { formatNumber } from '../quantity/format.js';
import type { FeatureKind } from '../study/feature.js';
import type { Cue } from '../study/show.js';
import { showFields } from '../study/show-fields.js';
import type { Assumptions } from './read-assumptions.js';
import { formatSi } from './read-cell.js';
import { RowReading } from './row-reading.js';
import { type Row, requireColumns, type Table } from './table.js';

/** One row of show.csv before its place in the list is known. */
export interface CueRow {
  reading: RowReading;
  name: string;
  /** null when it could not be read. */
  action: Cue['action'] | 'loop' | null;
  /** null when blank or unreadable. */
  toPosition: number | null;
  line: number;
}

/** Reads the rows of show.csv; the order of the cues is checked by the cue list. */
export function readCueRows(
  table: Table,
  kind: FeatureKind,
  assumptions: Assumptions,
  report: Report,
): CueRow[] {
  const fields = showFields(kind);
  const absent = requireColumns(table, ['action', 'to', 'seconds'], report);
  return table.rows.map((row, index) => {
    const reading = new RowReading(null, '', row.place, report);
    reading.read(fields, row.cells, table.style, undefined, absent);
    const action = reading.text('action') as CueRow['action'];
    const name = reading.text('name')?.trim() || `cue ${index + 1}`;
    if (action === 'loop') checkLoopRow(row, report);
    else checkCue(reading, name, action, row, absent, report);
    for (const field of fields) {
      if (field.default !== null && action !== 'loop')
        reading.assume(field, assumptions.of('cue', 'any', field.name));
    }
    return { reading, name, action, toPosition: reading.number('toPosition'), line: row.place.line! };
  });
}

function checkLoopRow(row: Row, report: Report): void {
  for (const [column, cell] of row.cells) {
    if (['action', 'cue', 'note'].includes(column) || column.startsWith('my_')) continue;
    report(cell.place, say.loopRowWithValues(column, cell.text));
  }
}

function checkCue(
  reading: RowReading,
  name: string,
  action: CueRow['action'],
  row: Row,
  absent: readonly string[],
  report: Report,
): void {
  if (reading.isBlank('durationS') && !absent.includes('seconds'))
    report(reading.at('seconds'), say.cueWithoutSeconds(name));
  if (action === 'move' && reading.isBlank('toPosition') && !absent.includes('to'))
    report(reading.at('to'), say.moveWithoutGoal(name));
  for (const { field, spread, place, written } of reading.provenance.values()) {
    if (spread !== null && spread.shape !== 'exact') report(place!, say.spreadNotUsed(field, written!));
  }
  const lights = reading.number('lightsFraction');
  const cell = row.cells.get('lights');
  if (lights !== null && cell !== undefined && lights > 0 && lights <= 0.01 && !cell.text.includes('%'))
    report(
      cell.place,
      say.lightsTooLow(cell.text, formatSi(lights, showFields('hinge')[5]!), formatNumber(lights * 1e4)),
    );
}
