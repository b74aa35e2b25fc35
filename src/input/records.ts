import Papa from 'papaparse';
import * as say from '../problem/file-messages.js';
import type { Report, Trouble } from '../problem/trouble.js';
import { spreadsheetError } from '../problem/value-messages.js';
import { isSpreadsheetError } from '../quantity/date-text.js';
import { mostColumns, mostRows } from './files.js';

/** One record of a file: the line where it starts and its cells, verbatim. */
export interface FileRecord {
  line: number;
  cells: string[];
}

/**
 * Splits a text into records, comments and blank lines left out, each with the line where it starts.
 * A misplaced quote ends the reading: everything behind it could be one cell.
 *
 * @returns null when the quotes do not close or there are too many rows; the reason has been reported
 */
export function recordsOf(
  text: string,
  delimiter: string,
  file: string,
  report: Report,
): FileRecord[] | null {
  const records: FileRecord[] = [];
  const lines = new LineCounter(text);
  let cursor = 0;
  let broken = false;
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    header: false,
    comments: '#',
    fastMode: false,
    skipEmptyLines: false,
    step({ data, errors, meta }, parser) {
      const line = lines.lineAt(startOfRecord(text, cursor));
      cursor = meta.cursor;
      const place = { file, line, column: null };
      if (data.every((cell) => cell.trim() === '') || data[0]!.trim().startsWith('#')) return;
      const quotes = errors.some(({ type }) => type === 'Quotes');
      const trouble = quotes ? say.badQuotes(data[0]!) : troubleOfSize(records.length, data.length);
      if (trouble === null) {
        records.push({ line, cells: data });
      } else {
        report(place, trouble);
        broken = true;
        parser.abort();
      }
    },
  });
  reportBrokenFormulas(text, delimiter, file, report);
  return broken ? null : records;
}

/** What is wrong with a record behind so many others that has so many cells. */
function troubleOfSize(before: number, cells: number): Trouble | null {
  if (before > mostRows) return say.tooManyRows(mostRows);
  return cells > mostColumns ? say.tooManyColumns(cells, mostColumns) : null;
}

/** Where the next record begins: behind the comment lines, which the parser skips without telling. */
function startOfRecord(text: string, cursor: number): number {
  let start = cursor;
  while (text[start] === '#') {
    const end = text.indexOf('\n', start);
    if (end < 0) return text.length;
    start = end + 1;
  }
  return start;
}

/** A row whose first cell is an error such as `#REF!` looks like a comment: it must not vanish unseen. */
function reportBrokenFormulas(text: string, delimiter: string, file: string, report: Report): void {
  text.split('\n').forEach((line, index) => {
    const first = line.split(delimiter, 1)[0]!.replace(/"/g, '').trim();
    if (!/^#[A-Z]/.test(first) || !isSpreadsheetError(first)) return;
    report({ file, line: index + 1, column: null }, spreadsheetError(first, 'a value'));
  });
}

/** Line numbers for growing positions in a text. */
class LineCounter {
  private position = 0;
  private line = 1;

  constructor(private readonly text: string) {}

  lineAt(position: number): number {
    for (; this.position < position; this.position++) {
      if (this.text.charCodeAt(this.position) === 10) this.line++;
    }
    return this.line;
  }
}
