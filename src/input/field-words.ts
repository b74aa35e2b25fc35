import { dimensions } from '../quantity/dimension.js';
import type { FieldDeclaration, Presence } from '../quantity/field.js';

/** What a cell of the field holds, in words: `torque: kg·cm, N·m, oz·in`, `listing, data-sheet or measured`. */
export function holdsWords(field: FieldDeclaration): string {
  if (field.kind === 'choice' || field.kind === 'yes-no') return field.choices.join(', ');
  if (field.kind === 'count') return 'whole number';
  if (field.kind === 'date') return 'date, 2026-03-14';
  if (field.dimension === null) return field.kind === 'name' ? 'id' : 'text';
  const units = dimensions[field.dimension].likelyUnits;
  const bare = field.habitualUnit === null ? '' : `bare number = ${field.habitualUnit || 'as it is'}`;
  const listed = units.length === 0 ? '' : units.join(', ');
  return [listed, bare].filter((part) => part !== '').join('; ');
}

/** What happens when the cell is blank, in words. */
export function blankWords(field: FieldDeclaration): string {
  return blank[field.presence](field);
}

const blank: Record<Presence, (field: FieldDeclaration) => string> = {
  required: () => 'required',
  either: () => 'required: the stall figure, or the whole rated point',
  assumed: ({ default: value, basis }) => (value === null ? basis : `${value} (${basis})`),
  optional: () => 'not known',
};

/** The comment line above an item in a starter file. */
export function commentLine(field: FieldDeclaration): string {
  const when = field.presence === 'required' ? 'required' : `blank: ${blankWords(field)}`;
  return `# ${field.name}: ${field.meaning} [${holdsWords(field)}; ${when}]. How: ${field.how}.`;
}
