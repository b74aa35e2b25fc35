/** A cell as CSV: quoted when it holds a comma, a quote, a line break or spaces at an end. */
function csvCell(text: string): string {
  return /[",\n]|^\s|\s$/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}

/** A row of cells as one line of CSV, without its line end. */
export function csvLine(cells: readonly string[]): string {
  return cells.map(csvCell).join(',');
}

/** Lines as the text of a file. */
export function csvText(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`;
}
