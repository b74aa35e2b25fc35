import type { DriveKind } from '../drives/sheet.js';
import type { Report } from '../problem/trouble.js';
import type { FieldDeclaration } from '../quantity/field.js';
import type { FeatureKind } from '../study/feature.js';
import type { Assumptions } from './read-assumptions.js';
import type { RowReading } from './row-reading.js';

/** What the rules of one candidate's sheet work with. */
export interface SheetContext {
  reading: RowReading;
  columns: readonly FieldDeclaration[];
  kind: DriveKind;
  feature: FeatureKind;
  isBaseline: boolean;
  assumptions: Assumptions;
  report: Report;
}
