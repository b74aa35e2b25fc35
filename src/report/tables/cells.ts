import type { TableCell, TableColumn, TableRow } from '../document.js';
import { plain, strong } from '../template/inline.js';
import { none } from '../words/figures.js';

/** A column of words. */
export function wordColumn(heading: string, share: number): TableColumn {
  return { heading, unit: '', align: 'left', share };
}

/** A column of figures with its unit. */
export function figureColumn(heading: string, unit: string, share = 1): TableColumn {
  return { heading, unit, align: 'right', share };
}

/** A cell of plain words; an empty one or a dash speaks in a low voice. */
export function cell(text: string, tone?: TableCell['tone']): TableCell {
  const muted = tone ?? (text === '' || text === none ? 'muted' : undefined);
  return { text: plain(text), ...(muted ? { tone: muted } : {}) };
}

/** A cell that names its row. */
export function head(text: string): TableCell {
  return { text: strong(text) };
}

/** A pass that holds in too few draws to have a tick and the tone of one: what, and in how many. */
export function onPaperCell(passes: string, share: string): TableCell {
  return { text: [{ text: passes, strong: true }, { text: `, ${share}` }] };
}

/** A heading row inside a table. */
export function groupRow(text: string): TableRow {
  return { cells: [head(text)], group: true };
}

/** A row that is neither a heading nor highlighted. */
export function row(...cells: TableCell[]): TableRow {
  return { cells };
}
