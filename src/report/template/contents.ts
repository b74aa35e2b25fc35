import { textOf } from './inline.js';
import { parseTemplate } from './parse-template.js';
import { nearestOf, type Templates, templateError, templateText } from './template-error.js';

/** Names the sections of the report in their order. */
export const contentsFile = 'report/contents.md';

/**
 * Sections of the report in the order of the list in `report/contents.md`: for each a function that gives its name, or
 * throws when nobody knows it or it stands there twice.
 *
 * @param known every section there is
 * @throws TemplateError for a list that is empty
 */
export function listedSections(templates: Templates, known: readonly string[]): (() => string)[] {
  const { nodes } = parseTemplate(contentsFile, templateText(templates, contentsFile));
  const items = nodes.flatMap((node) => (node.kind === 'list' ? node.items : []));
  if (items.length === 0) {
    throw templateError(contentsFile, 1, 'no section is listed; write one to a line, as in "- answer"');
  }
  const seen = new Set<string>();
  return items.map(({ line, parts }) => () => {
    const name = textOf(parts.map((part) => ('text' in part ? part : { text: `{{${part.placeholder}}}` })));
    if (!known.includes(name)) {
      throw templateError(contentsFile, line, `there is no section ${name}${nearestOf(name, known)}`);
    }
    if (seen.has(name)) throw templateError(contentsFile, line, `the section ${name} stands here twice`);
    seen.add(name);
    return name;
  });
}
