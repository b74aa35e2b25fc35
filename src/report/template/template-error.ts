/** A fault in a template: wording or chart specification that cannot be used as it stands. */
export class TemplateError extends Error {
  /**
   * @param file name of the template: `report/answer.md`
   * @param line line in the file, from 1
   * @param problem what is wrong and what would be right
   */
  constructor(
    readonly file: string,
    readonly line: number,
    readonly problem: string,
  ) {
    super(`templates/${file}, line ${line}: ${problem}`);
    this.name = 'TemplateError';
  }
}

/** Texts of all templates by their path below `templates/`: `report/answer.md`, `charts/theme.json`. */
export type Templates = Record<string, string>;

/**
 * Finds a template's text.
 *
 * @throws TemplateError naming the file when there is none of that name
 */
export function templateText(templates: Templates, file: string): string {
  const text = Object.hasOwn(templates, file) ? templates[file] : undefined;
  if (text === undefined) throw new TemplateError(file, 1, 'there is no such template');
  return text;
}

/**
 * The sentence for a placeholder nobody fills, with the nearest name that exists.
 *
 * @param name what the template asks for
 * @param known names that have a value here
 */
export function unknownPlaceholder(name: string, known: string[]): string {
  const nearest = known
    .map((candidate) => ({ candidate, distance: editDistance(name, candidate) }))
    .sort((a, b) => a.distance - b.distance || a.candidate.localeCompare(b.candidate, 'en'))[0];
  const hint =
    nearest && nearest.distance <= Math.max(2, name.length / 3)
      ? `; did you mean {{${nearest.candidate}}}?`
      : `; known here: ${[...known].sort().join(', ')}`;
  return `nothing is called {{${name}}}${hint}`;
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      current[j] = Math.min(previous[j]! + 1, current[j - 1]! + 1, change);
    }
    previous = current;
  }
  return previous[b.length]!;
}
