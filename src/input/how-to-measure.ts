import { driveTypes } from '../drives/registry.js';
import type { DriveKind } from '../drives/sheet.js';
import { studyFields } from '../study/fields.js';
import { loadFields, packFields } from '../study/supply-fields.js';

/**
 * What a field means and how a maker finds it.
 *
 * @param field - name as in the files
 * @param kind - type of the candidate it belongs to; null for the study, a pack or a load
 * @returns null for a field that the type, or the study, does not have
 */
export function howToMeasure(field: string, kind: DriveKind | null): { meaning: string; how: string } | null {
  const fields =
    kind === null
      ? [...studyFields('hinge'), ...studyFields('slide'), ...packFields, ...loadFields]
      : driveTypes[kind].columns;
  const found = fields.find(({ name }) => name === field);
  return found === undefined ? null : { meaning: found.meaning, how: found.how };
}
