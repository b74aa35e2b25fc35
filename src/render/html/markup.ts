import { keptWithUnits } from '../../quantity/unbroken.js';
import { cleanText } from '../../report/words/clean.js';

/** HTML as it will stand in the page. Everything else that is put into an element is text and gets escaped. */
export class Markup {
  constructor(readonly html: string) {}
}

/** What an element holds: text, elements, lists of both; `null` for nothing. */
export type Child = string | Markup | null | readonly Child[];

/** `null` leaves an attribute out, `true` writes its bare name. */
export type Attributes = Record<string, string | number | true | null>;

const voidElements = new Set(['br', 'col', 'hr', 'img', 'input', 'link', 'meta']);

const signs: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as HTML: no sign of it is read as markup, and control and direction characters are gone. */
function escaped(text: string): string {
  return cleanText(text).replace(/[&<>"']/g, (sign) => signs[sign]!);
}

/** `118–136`, `−3 to 0`: an en dash lets a line end behind it. */
const range = /[−+>]?[\d.]*\d(?:–| to )[−+>]?\d[\d.]*(?:\u00a0[^\s,;)]+)?\)?/g;

/** Text as HTML in which no line ends inside a figure: not before its unit, and not within a range. */
function unbroken(text: string): string {
  return escaped(keptWithUnits(text)).replace(range, '<span class="figure">$&</span>');
}

/** An element; texts among its attributes and children are escaped. */
export function element(name: string, attributes: Attributes, ...children: Child[]): Markup {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== null)
    .map(([key, value]) => (value === true ? ` ${key}` : ` ${key}="${escaped(String(value))}"`));
  const open = `<${name}${written.join('')}>`;
  if (voidElements.has(name)) return new Markup(open);
  // A title holds no elements: it is shown as it stands.
  const content =
    name === 'title' ? children.map((child) => escaped(String(child))).join('') : htmlOf(children);
  return new Markup(`${open}${content}</${name}>`);
}

/** Children as HTML. */
export function htmlOf(child: Child): string {
  if (child === null) return '';
  if (typeof child === 'string') return unbroken(child);
  return child instanceof Markup ? child.html : (child as readonly Child[]).map(htmlOf).join('');
}
