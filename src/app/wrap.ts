import { printable } from '../problem/printable.js';
import { breakingSpace } from '../quantity/unbroken.js';

/**
 * Text broken into lines at spaces, no figure parted from its unit, fit for a terminal: whatever in it came from a file
 * steers nothing.
 * @param width columns, indents included; a longer word stands alone on its line
 * @param first put before the first line
 * @param next put before every further line
 */
export function wrapped(text: string, width: number, first = '', next = first): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of printable(text).split(breakingSpace)) {
    const indent = lines.length === 0 ? first : next;
    if (line !== '' && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  lines.push((lines.length === 0 ? first : next) + line);
  return lines;
}
