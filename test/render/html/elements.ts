/** An element of a page as it is written: name and attributes. */
export interface Opened {
  name: string;
  attributes: Record<string, string>;
}

/** Every opening tag of a page, in order; what stands in the style sheet and in scripts is no tag. */
export function elementsOf(html: string): Opened[] {
  const page = html.replace(/(<(style|script)\b[^>]*>)[\s\S]*?<\/\2>/g, '$1');
  return [...page.matchAll(/<([a-z][a-z0-9]*)((?: [\w:-]+(?:="[^"]*")?)*)\/?>/gi)].map(([, name, rest]) => ({
    name: name!,
    attributes: Object.fromEntries(
      [...rest!.matchAll(/ ([\w:-]+)(?:="([^"]*)")?/g)].map(([, key, value]) => [key, value ?? '']),
    ),
  }));
}

/** What an attribute holds wherever it stands. */
export const valuesOf = (elements: readonly Opened[], name: string): string[] =>
  elements.flatMap(({ attributes }) => (name in attributes ? [attributes[name]!] : []));
