/** How a file separates its cells. */
export interface Dialect {
  delimiter: ',' | ';' | '\t';
  /** The text with a leading `sep=;` line emptied, so that line numbers stay. */
  text: string;
}

const delimiters = [',', ';', '\t'] as const;

/** Whether a raw line is a comment, quoted or not. */
function isCommentLine(line: string): boolean {
  return /^\s*"?\s*#/.test(line);
}

/**
 * Finds what separates the cells: a `sep=` line says it, else the delimiter seen most often outside quotes in the
 * first line that is no comment. A line with none of them is a table of one column.
 */
export function dialectOf(text: string): Dialect {
  const stated = /^\ufeff?sep=([,;\t])[^\n]*/i.exec(text);
  if (stated !== null) {
    return { delimiter: stated[1] as Dialect['delimiter'], text: text.slice(stated[0].length) };
  }
  const first = text.split('\n').find((line) => line.trim() !== '' && !isCommentLine(line)) ?? '';
  const bare = first.replace(/"[^"]*"/g, '');
  const counts = delimiters.map((delimiter) => bare.split(delimiter).length);
  return { delimiter: delimiters[counts.indexOf(Math.max(...counts))]!, text };
}
