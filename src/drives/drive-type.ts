import type { FieldDeclaration } from '../quantity/field.js';
import type { SourceId } from '../sources/sources.js';
import type { DriveKind, DriveSheet, Motion, TypicalFigures } from './sheet.js';

/** How well a drive passes effort backwards, from feature to motor; negative = it locks. */
export interface BackwardEfficiencies {
  /** While moving. */
  running: number;
  /** From standstill. */
  standing: number;
  /** From standstill while shaken. */
  shaken: number;
}

/** What the thread or worm geometry of a sheet says, where it is known. */
export interface GeometryFigures extends BackwardEfficiencies {
  /** Forward efficiency of the locking mesh by its geometry. */
  forward: number;
  /** Backward efficiency at standstill with what a collar adds; null when there is no collar. */
  standingWithCollar: number | null;
}

/**
 * Everything that sets one kind of drive apart. A new kind is one file that exports such an object
 * and one line in the registry; nothing outside `drives/` asks which kind it has.
 */
export interface DriveType {
  kind: DriveKind;
  /** As printed: `position-hold servo`. */
  label: string;
  motion: Motion;
  /** Columns of candidates.csv that this kind reads, in template order. */
  columns: readonly FieldDeclaration[];
  /** Whether calculation alone may call it locking; a measurement always may. */
  locksByCalculation: boolean;
  /** Sheet voltage × this = highest voltage taken when the sheet names none. */
  assumedVoltageRatio: number;
  /** Whether the motor meets the full pack at power-on, without a ramp. */
  startsAtPowerOn: boolean;
  /**
   * Backward efficiencies when no geometry is known.
   * @param forwardEfficiency of the whole drive, 0…1, already held under the type's ceiling
   */
  backward(forwardEfficiency: number, sheet: DriveSheet, typical: TypicalFigures): BackwardEfficiencies;
  /** Backward efficiencies when the sheet states the running one of the whole drive. */
  backwardAsStated(running: number, sheet: DriveSheet, typical: TypicalFigures): BackwardEfficiencies;
  /** What the sheet's geometry says; null when it states none. */
  geometry(sheet: DriveSheet, typical: TypicalFigures): GeometryFigures | null;
  /** Standing cautions of this kind, in words, shown on its page. */
  cautions: readonly string[];
  /** Ids in `sources/` that its rules rest on. */
  sources: readonly SourceId[];
}
