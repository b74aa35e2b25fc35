import { printable } from '../../problem/printable.js';

const halfCharacters = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/**
 * Text from a file made fit for a page or a terminal: escape sequences, control and direction characters are
 * gone, line breaks are spaces; so are halves of characters and what only chooses another look of a sign.
 */
export function cleanText(text: string): string {
  return printable(text)
    .replace(halfCharacters, '')
    .replace(/\p{Variation_Selector}/gu, '');
}

/** Most characters of a text in print; whoever needs more opens the file. */
const longestInPrint = 600;

/** Texts in which there is nothing to clean. */
const plain = /^[ -~]*$/;

/** A text cleaned and short enough for a page: what is cut off is counted. */
function forPrint(text: string): string {
  if (text.length <= longestInPrint && plain.test(text)) return text;
  const characters = Array.from(cleanText(text));
  if (characters.length <= longestInPrint) return characters.join('');
  const shown = characters.slice(0, longestInPrint - 100).join('');
  return `${shown} … (cut here; ${characters.length} characters in all)`;
}

/** Series are long and hold nothing to clean. */
const isFigure = (item: unknown): boolean => item === null || typeof item === 'number';

/** The same structure with every text in it made fit for print; numbers, lists and keys stay as they are. */
export function cleanTree<T>(tree: T): T {
  if (typeof tree === 'string') return forPrint(tree) as T;
  if (Array.isArray(tree)) return (tree.every(isFigure) ? tree : tree.map((item) => cleanTree(item))) as T;
  if (tree === null || typeof tree !== 'object') return tree;
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, cleanTree(value)])) as T;
}
