import { cleanText } from '../../../report/words/clean.js';

/** Attributes that say what holds anyway, or what the page says once for all charts. */
const needless =
  / (?:class(?!="mark-text role-axis-label")|role|style|aria-[a-z]+|pointer-events|version|xmlns(?::xlink)?|font-family|opacity(?==.1")|transform(?=="translate\(0,0\)"))="[^"]*"/g;

/** Frames in which nothing is drawn. */
const emptyFrame =
  /^<path class="(?:background|foreground)" aria-hidden="true" d="[^"]*"(?: pointer-events="none")?(?: display="none")?\/>$/;

/**
 * A drawing made fit to stand beside others in one page: ids of its own, as wide as its place, and without what the
 * page says already. Links lose their ends; words stay as they are.
 * @param name begins every id; unique in the page
 */
export function tidySvg(svg: string, name: string): string {
  const ids = new Map<string, string>();
  const renamed = (id: string): string => {
    if (!ids.has(id)) ids.set(id, `${name}_${ids.size + 1}`);
    return ids.get(id)!;
  };
  const tidyTag = (tag: string): string => {
    if (emptyFrame.test(tag) || /^<\/?a\b/.test(tag)) return '';
    return tag
      .replace(needless, '')
      .replace(/(?<=^<svg[^>]*) (?:width|height)="[^"]*"/g, '')
      .replace(/(\.\d\d)\d+/g, '$1')
      .replace(/ id="([^"]*)"/, (_, id: string) => ` id="${renamed(id)}"`)
      .replace(/url\(#([^)]*)\)/g, (_, id: string) => `url(#${renamed(id)})`);
  };
  const text = svg.split('\n').map(cleanText).join('\n');
  return text.replace(/<[^>]*>/g, tidyTag);
}

/** Every colour that the drawings are painted with, in the order of the alphabet. */
export function coloursOf(drawings: readonly string[]): string[] {
  const tags = drawings.flatMap((svg) => svg.match(/<[^>]*>/g) ?? []);
  const found = tags.flatMap((tag) =>
    [...tag.matchAll(/ (?:fill|stroke|stop-color)="([^"]*)"/g)].map((match) => match[1]!),
  );
  return [...new Set(found)].sort();
}
