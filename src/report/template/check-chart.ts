import { gathered, templateError } from './template-error.js';

/** Names under which a specification would fetch, point to or make up something that the report did not give it. */
const refusedKeys = new Set(['url', 'href', 'loader', 'baseURL', 'sequence']);

interface Token {
  line: number;
  text: string;
  isKey: boolean;
}

/**
 * Looks for what a chart of the report never needs and must not do: read a file, fetch an address, show a picture or a
 * link, make rows without end. The JSON was read before and is known to be sound.
 *
 * @throws TemplateError with file and line of each
 */
export function checkChart(file: string, source: string): void {
  const tokens = tokensOf(source);
  gathered(
    tokens.map((token, index) => () => {
      const problem = problemOf(token, tokens[index - 1]);
      if (problem !== null) throw templateError(file, token.line, problem);
    }),
  );
}

/** All strings of a JSON text in their order; read as JSON reads them, so that no escape hides a name. */
function tokensOf(source: string): Token[] {
  let line = 1;
  let from = 0;
  return [...source.matchAll(/("(?:[^"\\]|\\.)*")(\s*:)?/g)].map((match) => {
    line += source.slice(from, match.index).split('\n').length - 1;
    from = match.index;
    return { line, text: JSON.parse(match[1]!) as string, isKey: match[2] !== undefined };
  });
}

function problemOf({ text, isKey }: Token, before: Token | undefined): string | null {
  if (isKey && refusedKeys.has(text)) {
    return `"${text}" is not allowed here: a chart shows only the values that the report gives it, such as {{rows}}`;
  }
  const isMark = before?.isKey === true && (before.text === 'mark' || before.text === 'type');
  if (isMark && !isKey && text === 'image') {
    return 'the mark "image" is not allowed: a chart shows no pictures; take another mark, such as "bar"';
  }
  return null;
}
