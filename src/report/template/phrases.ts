import { fillLine } from './fill-template.js';
import { type InlinePart, textOf } from './inline.js';
import { type ParsedTemplate, parseTemplate } from './parse-template.js';
import { TemplateError, type Templates, templateText } from './template-error.js';

/** Gives a short text of the catalogue with its values put in. */
export type Phrases = (name: string, values?: Record<string, string>) => string;

const file = 'report/phrases.md';

/**
 * Reads the catalogue of short texts: `## name`, then one paragraph with placeholders.
 *
 * @throws TemplateError for a name that is missing or a placeholder without a value
 */
export function readPhrases(templates: Templates): Phrases {
  const catalogue = collect(parseTemplate(file, templateText(templates, file)));
  return (name, values = {}) => {
    const entry = catalogue.get(name);
    if (!entry) throw new TemplateError(file, 1, `there is no phrase "## ${name}"`);
    return textOf(fillLine(file, entry.line, entry.parts, { values }));
  };
}

function collect(template: ParsedTemplate): Map<string, { line: number; parts: InlinePart[] }> {
  const catalogue = new Map<string, { line: number; parts: InlinePart[] }>();
  let name = '';
  for (const node of template.nodes) {
    if (node.kind === 'heading') name = node.parts.map((part) => ('text' in part ? part.text : '')).join('');
    else if (node.kind === 'paragraph') catalogue.set(name, node);
    else if (node.kind === 'blocks') {
      catalogue.set(name, { line: node.line, parts: [{ placeholder: node.name, marks: {} }] });
    }
  }
  return catalogue;
}
