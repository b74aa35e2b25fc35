import type { Block, Column } from '../../../report/document.js';
import { element, type Markup } from '../markup.js';
import type { Sheet } from '../sheet.js';
import { calculation, caution, chart, facts } from './figures.js';
import { image } from './image.js';
import { table } from './table.js';
import { heading, list, paragraph } from './text.js';

/** A block of the document as an element. A new kind of block gets its line here; the compiler asks for it. */
export function blockMarkup(sheet: Sheet, block: Block): Markup {
  switch (block.kind) {
    case 'heading':
      return heading(sheet, block);
    case 'paragraph':
      return paragraph(block);
    case 'list':
      return list(block);
    case 'table':
      return table(sheet, block);
    case 'facts':
      return facts(block);
    case 'caution':
      return caution(block);
    case 'calculation':
      return calculation(block);
    case 'chart':
      return chart(sheet, block);
    case 'image':
      return image(block);
    case 'side-by-side':
      return columnsMarkup(sheet, block.columns);
    case 'page-break':
      return element('div', { class: 'page-break' });
  }
}

/** Columns beside each other where there is room, else under each other. */
function columnsMarkup(sheet: Sheet, columns: readonly Column[]): Markup {
  const shares = columns
    .map(({ share }) => share)
    .join('-')
    .replaceAll('.', '_');
  sheet.shares.add(shares);
  return element(
    'div',
    { class: `beside shares-${shares}` },
    columns.map(({ blocks }) =>
      element(
        'div',
        {},
        blocks.map((block) => blockMarkup(sheet, block)),
      ),
    ),
  );
}
