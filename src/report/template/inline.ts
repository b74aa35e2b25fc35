import type { Inline, Span } from '../document.js';

/** A piece of a template's running text: words, or the place of a value. */
export type InlinePart = { text: string; marks: Marks } | { placeholder: string; marks: Marks };

type Marks = Omit<Span, 'text'>;

const token = /\\([\\*`{}_[\]#>!-])|\*\*|\*|`|\{\{\s*([A-Za-z][\w.-]*)\s*\}\}/g;

/**
 * Reads emphasis and placeholders: `**strong**`, `*emphasis*`, `` `code` ``, `{{name}}`; a backslash takes
 * the meaning from the sign after it. Values are put in later, so nothing in them is read as Markdown.
 */
export function parseInline(source: string): InlinePart[] {
  const parts: InlinePart[] = [];
  const open = { strong: false, emphasis: false, code: false };
  let from = 0;
  const push = (text: string): void => {
    if (text !== '') parts.push({ text, marks: marksOf(open) });
  };
  for (const match of source.matchAll(token)) {
    push(source.slice(from, match.index));
    from = match.index + match[0].length;
    if (match[1] !== undefined) push(match[1]);
    else if (match[2] !== undefined) parts.push({ placeholder: match[2], marks: marksOf(open) });
    else if (match[0] === '`') open.code = !open.code;
    else if (open.code) push(match[0]);
    else if (match[0] === '**') open.strong = !open.strong;
    else open.emphasis = !open.emphasis;
  }
  push(source.slice(from));
  return parts;
}

function marksOf(open: { strong: boolean; emphasis: boolean; code: boolean }): Marks {
  return {
    ...(open.strong ? { strong: true } : {}),
    ...(open.emphasis ? { emphasis: true } : {}),
    ...(open.code ? { code: true } : {}),
  };
}

/** Plain text as a run without emphasis; the empty text gives no run. */
export function plain(text: string): Inline {
  return text === '' ? [] : [{ text }];
}

/** A run that stands out. */
export function strong(text: string): Inline {
  return text === '' ? [] : [{ text, strong: true }];
}

/** The words of a run of text without its emphasis. */
export function textOf(inline: Inline): string {
  return inline.map((span) => span.text).join('');
}
