import { nearestName } from '../../problem/nearest-name.js';

/** One fault in a template: where it stands, what is wrong and what would be right. */
export interface TemplateProblem {
  /** Name of the template: `report/answer.md`. */
  file: string;
  /** Line in the file, from 1. */
  line: number;
  problem: string;
}

/** Wording or chart specifications that cannot be used as they stand; several faults may be told at once. */
export class TemplateError extends Error {
  readonly problems: readonly TemplateProblem[];

  constructor(problems: readonly TemplateProblem[]) {
    super(
      problems.map(({ file, line, problem }) => `templates/${file}, line ${line}: ${problem}`).join('\n'),
    );
    this.problems = problems;
    this.name = 'TemplateError';
  }
}

/** A single fault. */
export function templateError(file: string, line: number, problem: string): TemplateError {
  return new TemplateError([{ file, line, problem }]);
}

/**
 * Does every task, so that the faults of all are told together.
 *
 * @throws TemplateError with every fault when there was one; each is told once
 */
export function gathered<T extends readonly unknown[]>(
  tasks: readonly [...{ [K in keyof T]: () => T[K] }],
): T {
  const done: unknown[] = [];
  const told = new Map<string, TemplateProblem>();
  for (const task of tasks) {
    try {
      done.push(task());
    } catch (error) {
      if (!(error instanceof TemplateError)) throw error;
      for (const one of error.problems) told.set(JSON.stringify(one), one);
    }
  }
  if (told.size > 0) throw new TemplateError([...told.values()]);
  return done as unknown as T;
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
  if (text === undefined) throw templateError(file, 1, 'there is no such template');
  return text;
}

/**
 * The sentence for a placeholder nobody fills, with the nearest name that exists.
 *
 * @param name what the template asks for
 * @param known names that have a value here
 */
export function unknownPlaceholder(name: string, known: string[]): string {
  return `nothing is called {{${name}}}${nearestOf(name, known, (near) => `{{${near}}}`)}`;
}

/** More names than these help nobody. */
const mostListed = 30;

/** `; did you mean x?`, or all names when none is near. */
export function nearestOf(written: string, known: readonly string[], shown = (name: string) => name): string {
  const nearest = nearestName(written, known);
  if (nearest !== null) return `; did you mean ${shown(nearest)}?`;
  if (known.length > mostListed) return '';
  return `; known here: ${[...known].sort().join(', ') || 'none'}`;
}
