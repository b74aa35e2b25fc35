import type { Block, Inline, Span } from '../../../report/document.js';
import { type Child, element, type Markup } from '../markup.js';
import type { Sheet } from '../sheet.js';

/** A run of text with its emphasis. */
export function inline(text: Inline): Child {
  return text.map(span);
}

function span({ text, strong, emphasis, code }: Span): Child {
  let child: Child = brokenLines(text);
  if (code) child = element('code', {}, child);
  if (emphasis) child = element('em', {}, child);
  return strong ? element('strong', {}, child) : child;
}

/** Text with its forced line ends. */
function brokenLines(text: string): Child {
  return text.split('\n').flatMap((line, index) => (index === 0 ? [line] : [element('br', {}), line]));
}

/** A heading under that of the page: no level is left out, whatever the wording does, and equals stay equals. */
export function heading(sheet: Sheet, { level, text, id }: Extract<Block, { kind: 'heading' }>): Markup {
  const { heading: last } = sheet;
  const shown = level === last.written ? last.level : Math.min(level, last.level + 1);
  sheet.heading = { level: shown, written: level, text };
  return element(`h${shown + 1}`, { id: sheet.idFor(id) }, text);
}

/** A paragraph in its style. */
export function paragraph({ text, style }: Extract<Block, { kind: 'paragraph' }>): Markup {
  return element('p', { class: style === 'body' ? null : style }, inline(text));
}

/** A list with or without numbers. */
export function list({ ordered, items, style }: Extract<Block, { kind: 'list' }>): Markup {
  const entries = items.map((item) => element('li', {}, inline(item)));
  return element(ordered ? 'ol' : 'ul', { class: style === 'small' ? 'small' : null }, entries);
}
