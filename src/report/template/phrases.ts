import { fillLine } from './fill-template.js';
import { type InlinePart, textOf } from './inline.js';
import { type ParsedTemplate, parseTemplate, type TemplateNode } from './parse-template.js';
import { nearestOf, type Templates, templateError, templateText } from './template-error.js';

/** Gives a short text of the catalogue with its values put in. */
export type Phrases = (name: string, values?: Record<string, string>) => string;

/** Holds all short texts. */
export const phrasesFile = 'report/phrases.md';

/**
 * Reads the catalogue of short texts: `## name`, then one paragraph with placeholders.
 *
 * @throws TemplateError for a name that is missing or a placeholder without a value
 */
export function readPhrases(templates: Templates): Phrases {
  const catalogue = collect(parseTemplate(phrasesFile, templateText(templates, phrasesFile)));
  return (name, values = {}) => {
    const entry = catalogue.get(name);
    if (!entry) {
      const hint = nearestOf(name, [...catalogue.keys()], (near) => `## ${near}`);
      throw templateError(phrasesFile, 1, `there is no text "## ${name}"${hint}`);
    }
    return textOf(fillLine(phrasesFile, entry.line, entry.parts, { values }));
  };
}

/** Names of all short texts in a catalogue, with the line of each. */
export function phraseNames(source: string): { name: string; line: number }[] {
  const { nodes } = parseTemplate(phrasesFile, source);
  return nodes.flatMap((node) =>
    node.kind === 'heading' ? [{ name: headingName(node), line: node.line }] : [],
  );
}

/**
 * A catalogue with the short texts it lacks taken from another; so an edited copy outlives a version with more of them.
 * The lines of the first keep their numbers.
 */
export function completedPhrases(source: string, complete: string): string {
  const present = new Set(phraseNames(source).map(({ name }) => name));
  const lines = complete.split('\n');
  const headings = phraseNames(complete);
  const lacking = headings.flatMap(({ name, line }, index) =>
    present.has(name) ? [] : lines.slice(line - 1, (headings[index + 1]?.line ?? lines.length + 1) - 1),
  );
  return [source, ...lacking].join('\n');
}

function collect(template: ParsedTemplate): Map<string, { line: number; parts: InlinePart[] }> {
  const catalogue = new Map<string, { line: number; parts: InlinePart[] }>();
  let name = '';
  for (const node of template.nodes) {
    if (node.kind === 'heading') name = headingName(node);
    else if (node.kind === 'paragraph') catalogue.set(name, node);
    else if (node.kind === 'blocks') {
      catalogue.set(name, { line: node.line, parts: [{ placeholder: node.name, marks: {} }] });
    }
  }
  return catalogue;
}

function headingName({ parts }: Extract<TemplateNode, { kind: 'heading' }>): string {
  return parts.map((part) => ('text' in part ? part.text : '')).join('');
}
