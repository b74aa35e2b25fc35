import type { Block, CautionBlock, ChartBlock } from '../../../report/document.js';
import { element, Markup } from '../markup.js';
import type { Sheet } from '../sheet.js';
import { inline } from './text.js';

/**
 * A chart with the reader's question above and what it shows below. The drawing alone is the image, so that a screen
 * reader still reads the caption beside it.
 */
export function chart(sheet: Sheet, block: ChartBlock): Markup {
  const drawn = sheet.charts.get(block);
  if (!drawn) throw new Error(`chart ${block.name} was not drawn`);
  const drawing = (place: 'wide' | 'narrow') => element('div', { class: place }, new Markup(drawn[place]));
  return element(
    'figure',
    {},
    element('p', { class: 'question' }, block.title),
    element('div', { role: 'img', 'aria-label': block.alternative }, drawing('wide'), drawing('narrow')),
    block.caption.length === 0 ? null : element('figcaption', {}, inline(block.caption)),
  );
}

/** A caution: its severity in a word, the figure that raised it, what it means and what to do. */
export function caution({ severity, label, about, figure, text, action }: CautionBlock): Markup {
  return element(
    'div',
    { class: `caution ${severity}` },
    element(
      'p',
      { class: 'severity' },
      element('strong', {}, label),
      figure === '' ? null : [' ', element('span', {}, figure)],
    ),
    element(
      'div',
      {},
      element('p', {}, about === '' ? null : element('strong', {}, `${about}: `), inline(text)),
      action.length === 0 ? null : element('p', {}, '→ ', inline(action)),
    ),
  );
}

/** A grid of labels and values. */
export function facts({ items, columns }: Extract<Block, { kind: 'facts' }>): Markup {
  const entries = items.map(({ label, value, note }) =>
    element(
      'div',
      {},
      element('dt', {}, label),
      element('dd', {}, value, note ? [' ', element('em', {}, note)] : null),
    ),
  );
  return element('dl', { class: columns > 1 ? 'facts many' : 'facts' }, entries);
}

/** One line of the working: quantity, equation, numbers, result, and the source below. */
export function calculation(line: Extract<Block, { kind: 'calculation' }>): Markup {
  return element(
    'div',
    { class: 'calculation' },
    element('p', {}, element('strong', {}, line.quantity)),
    element('p', {}, element('em', {}, line.equation)),
    element('p', {}, line.numbers),
    element('p', { class: 'result' }, element('strong', {}, `= ${line.result}`)),
    line.source === '' ? null : element('p', { class: 'small' }, line.source),
  );
}
