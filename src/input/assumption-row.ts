import type { Dimension } from '../quantity/dimension.js';
import { choice, count, type FieldDeclaration, quantity } from '../quantity/field.js';

/** One line of the table of assumptions as it ships: what is taken, and how a changed value is read. */
export interface AssumptionRow {
  group: string;
  /** Whom it concerns: a drive type, a chemistry, an origin of figures, or `any`. */
  name: string;
  item: string;
  /** In the value grammar. */
  value: string;
  basis: string;
  /** How the value is read. */
  field: FieldDeclaration;
}

/** Words that mark a default nobody has published. */
export const fromExperience = 'from experience, no published source';

const told = { meaning: 'a value that is taken when nothing better is known', how: '' };

/** A row whose value is a quantity. */
export function row(
  group: string,
  name: string,
  item: string,
  dimension: Dimension,
  value: string,
  basis: string = fromExperience,
): AssumptionRow {
  const field =
    dimension === 'count' ? count('value', 'value', 0, told) : quantity('value', 'value', dimension, told);
  return { group, name, item, value, basis, field };
}

/** A row whose value is a word. */
export function wordRow(
  group: string,
  name: string,
  item: string,
  choices: readonly string[],
  value: string,
  basis: string,
): AssumptionRow {
  return { group, name, item, value, basis, field: choice('value', 'value', choices, told) };
}

/** The row of a field's own default; the field says how it is read. */
function fieldRow(group: string, name: string, field: FieldDeclaration): AssumptionRow {
  return {
    group,
    name,
    item: field.name,
    value: field.default!,
    basis: field.basis,
    field: {
      ...field,
      name: 'value',
      property: 'value',
      presence: 'required',
      spreadGroup: null,
      plausible: null,
    },
  };
}

/** The rows of all fields of a list that have a default of their own. */
export function fieldRows(group: string, name: string, fields: readonly FieldDeclaration[]): AssumptionRow[] {
  return fields.filter((field) => field.default !== null).map((field) => fieldRow(group, name, field));
}
