import { driveTypes } from '../drives/registry.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { formatNumber, formatQuantity, formatValue } from '../quantity/format.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import { measuredDimensions } from '../study/choosing-fields.js';
import { studyFields } from '../study/fields.js';
import type { Provenance } from '../study/provenance.js';
import type { Study } from '../study/study.js';
import { loadFields, packFields } from '../study/supply-fields.js';

/** A value of an input in the unit in which that input is shown. */
export function shownValue(study: Study, provenance: Provenance, value: number): string {
  const field = declarationOf(study, provenance);
  if (field?.dimension == null) return formatNumber(value);
  return field.displayUnit === null
    ? formatQuantity(value, field.dimension)
    : formatValue(value, field.displayUnit, 3, field.dimension);
}

/** Name of an input as its maker knows it: `feature.mass`, `stall_torque of servo-now`. */
export function inputName({ field, owner }: Pick<Provenance, 'field' | 'owner'>): string {
  return owner === null ? field : `${field} of ${owner}`;
}

/** A measured or predicted figure with its unit; a dash when there is none. */
export function shownMeasure(quantity: MeasuredQuantity, value: number | null): string {
  if (value === null) return '–';
  if (quantity === 'runtime') return formatValue(value, 'min');
  return formatQuantity(value, measuredDimensions[quantity]);
}

function declarationOf(study: Study, { path, field }: Provenance): FieldDeclaration | undefined {
  const owner = study.candidates.find(({ id }) => path.startsWith(`candidates.${id}.`));
  const fields =
    owner === undefined
      ? [...studyFields(study.feature.kind), ...packFields, ...loadFields]
      : driveTypes[owner.kind].columns;
  return fields.find(({ name }) => name === field);
}
