import type { Block, Fact } from '../document.js';
import type { InlinePart } from './inline.js';

/** Containers whose list items become a grid, and how each is set. */
const factStyles = { facts: 'plain', headlines: 'headline', blanks: 'blank' } as const;
/** Word after `:::` that opens a grid. */
export type FactContainer = keyof typeof factStyles;

/** One item of a grid as read: `label | value | note`, the last two optional. */
export interface FactItem {
  line: number;
  label: InlinePart[];
  value: InlinePart[];
  note: InlinePart[];
}

/** Whether a container's name is that of a grid. */
export function isFactContainer(word: string): word is FactContainer {
  return Object.hasOwn(factStyles, word);
}

/** Parts an item at its bars; a bar inside a value that is put in later parts nothing. */
export function factItem({ line, parts }: { line: number; parts: InlinePart[] }): FactItem {
  const pieces: InlinePart[][] = [[]];
  for (const part of parts) {
    if (!('text' in part)) pieces.at(-1)!.push(part);
    else {
      const [first = '', ...rest] = part.text.split('|');
      pieces.at(-1)!.push({ ...part, text: first });
      for (const text of rest) pieces.push([{ ...part, text }]);
    }
  }
  const [label = [], value = [], note = []] = pieces;
  return { line, label, value, note };
}

/**
 * The grid with its values put in; a fact without a value is left out, unless it is a blank to fill in.
 * @param wordsOf puts values into a piece of a line
 */
export function fillFacts(
  node: { container: FactContainer; columns: number; items: FactItem[] },
  wordsOf: (line: number, parts: InlinePart[]) => string,
): Block[] {
  const style = factStyles[node.container];
  const items = node.items
    .map(({ line, label, value, note }): Fact => {
      const [name, figure, aside] = [label, value, note].map((parts) => wordsOf(line, parts).trim());
      return { label: name!, value: figure!, note: aside! };
    })
    .filter(({ value }) => style === 'blank' || value !== '');
  return items.length === 0 ? [] : [{ kind: 'facts', style, items, columns: node.columns }];
}
