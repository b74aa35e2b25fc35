import Papa from 'papaparse';
import type { ExportCell, ExportTable } from '../../report/index.js';

/** The mark before decimals; with a comma there, semicolons separate the cells. */
export type DecimalMark = 'point' | 'comma';

/**
 * A table as a spreadsheet reads it: UTF-8 with byte order mark, CRLF, quotes where RFC 4180 wants them.
 *
 * A text that a spreadsheet would run as a formula gets an apostrophe in front; numbers stay numbers.
 * @source rfc-4180, Common Format and MIME Type for CSV Files
 */
export function renderCsv({ header, rows }: ExportTable, decimal: DecimalMark = 'point'): string {
  const cell = (value: ExportCell): string =>
    typeof value === 'number' ? numberText(value, decimal) : harmless(value ?? '');
  const text = Papa.unparse([header.map(harmless), ...rows.map((row) => row.map(cell))], {
    delimiter: decimal === 'comma' ? ';' : ',',
    newline: '\r\n',
  });
  return `\ufeff${text}\r\n`;
}

function numberText(value: number, decimal: DecimalMark): string {
  return decimal === 'comma' ? String(value).replace('.', ',') : String(value);
}

// Signs that begin a formula, also in their full-width forms: at the beginning of a cell, and behind anything that a
// spreadsheet with other settings takes for the end of a cell.
const formulaSigns = /(^[\s']*|[,;\t\r\n"])(?=[=+\-@＝＋－＠])/g;

/** A text that no spreadsheet runs, whatever it takes for a separator; everything else of it stays. */
function harmless(text: string): string {
  return text.replace(formulaSigns, (before) => `${before}'`);
}
