// C0 and C1 controls except the line feed, soft hyphens, zero-width and direction marks, variation selectors,
// the byte order mark, lone surrogates.
const unwanted =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
  /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u00ad\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/**
 * Text from a file made fit for a page or a terminal: escape sequences, control and direction characters are
 * gone, tabs and line breaks are single spaces.
 */
export function cleanText(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: terminal escape sequences start with it
      .replace(/\u001b(?:\[[0-?]*[ -/]*[@-~]|\][^\u0007\u001b]*(?:\u0007|\u001b\\)|[@-Z\\^_])/g, '')
      .replace(/[\t\r\n\u2028\u2029]+/g, ' ')
      .replace(unwanted, '')
      .replace(/\p{Variation_Selector}/gu, '')
  );
}

/** Most characters of a text in print; whoever needs more opens the file. */
const longestInPrint = 600;

/** A text cleaned and short enough for a page: what is cut off is counted. */
export function forPrint(text: string): string {
  const characters = Array.from(cleanText(text));
  if (characters.length <= longestInPrint) return characters.join('');
  const shown = characters.slice(0, longestInPrint - 100).join('');
  return `${shown} … (cut here; ${characters.length} characters in all)`;
}

/** The same structure with every text in it made fit for print; numbers, lists and keys stay as they are. */
export function cleanTree<T>(tree: T): T {
  if (typeof tree === 'string') return forPrint(tree) as T;
  if (Array.isArray(tree)) {
    return (typeof tree[0] === 'number' ? tree : tree.map((item) => cleanTree(item))) as T;
  }
  if (tree === null || typeof tree !== 'object') return tree;
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, cleanTree(value)])) as T;
}
