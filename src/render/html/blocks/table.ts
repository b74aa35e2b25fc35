import type { TableBlock, TableCell, TableColumn, TableRow } from '../../../report/document.js';
import { type Child, element, type Markup } from '../markup.js';
import type { Sheet } from '../sheet.js';
import { inline } from './text.js';

/** Tables with more columns scroll by themselves where the page is narrow; others break their words. */
const mostFixedColumns = 3;

/** A table with caption and headings; a wide one in a frame that scrolls and can be reached with the keyboard. */
export function table(sheet: Sheet, block: TableBlock): Markup {
  const { title, columns, rows, note, compact } = block;
  const name = title === '' ? sheet.heading.text : title;
  const isWide = columns.length > mostFixedColumns;
  const classes = [compact ? 'compact' : '', isWide ? `columns-${columns.length}` : ''];
  const body = element(
    'table',
    { class: classes.join(' ').trim() || null },
    element('caption', { class: title === '' ? 'unseen' : null }, name),
    head(columns),
    groupsOf(rows).map((group) =>
      element(
        'tbody',
        {},
        group.map((row) => tableRow(block, row)),
      ),
    ),
  );
  const frame = isWide
    ? element('div', { class: 'scroll', role: 'region', 'aria-label': `Table: ${name}`, tabindex: 0 }, body)
    : body;
  return element(
    'div',
    { class: 'table' },
    frame,
    note.length === 0 ? null : element('p', { class: 'small' }, inline(note)),
  );
}

function head(columns: readonly TableColumn[]): Child {
  if (columns.every(({ heading, unit }) => heading === '' && unit === '')) return null;
  const cells = columns.map(({ heading, unit, align }) => {
    const words = [heading, unit === '' ? null : element('span', { class: 'unit' }, ` ${unit}`)];
    const isEmpty = heading === '' && unit === '';
    return element(isEmpty ? 'td' : 'th', { class: align, scope: isEmpty ? null : 'col' }, words);
  });
  return element('thead', {}, element('tr', {}, cells));
}

/** Rows under their group headings; rows before the first heading are a group of their own. */
function groupsOf(rows: readonly TableRow[]): TableRow[][] {
  const groups: TableRow[][] = [];
  for (const row of rows) {
    if (row.group || groups.length === 0) groups.push([]);
    groups.at(-1)!.push(row);
  }
  return groups;
}

function tableRow({ columns, rowHeads }: TableBlock, row: TableRow): Markup {
  if (row.group) {
    const across = { colspan: columns.length, scope: 'rowgroup' };
    return element('tr', { class: 'group' }, element('th', across, inline(row.cells[0]?.text ?? [])));
  }
  let column = 0;
  const cells = row.cells.map((cell, index) => {
    const isHead = rowHeads && index === 0;
    const { align } = columns[column] ?? { align: 'left' };
    column += cell.span ?? 1;
    const attributes = {
      class: [align, cell.tone ?? ''].join(' ').trim(),
      scope: isHead ? 'row' : null,
      colspan: spanOf(cell),
    };
    return element(isHead ? 'th' : 'td', attributes, inline(cell.text));
  });
  return element('tr', { class: row.highlighted ? 'highlighted' : null }, cells);
}

const spanOf = ({ span }: TableCell): number | null => (span === undefined || span === 1 ? null : span);
