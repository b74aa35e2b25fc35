import type { DriveParameters } from '../drives/drive-parameters.js';
import type { CouplingParameters } from '../physics/linkage.js';
import type { LoadParameters } from '../physics/load.js';
import type { Bus } from './bus.js';
import type { CueRange } from './mechanics.js';
import type { LockingClass, StopName } from './outcome.js';
import type { PackModel } from './pack-model.js';
import type { ChosenPivots } from './strut.js';

/** One candidate on its feature and pack, as plain numbers: what every part of the simulation works from. */
export interface CandidateModel {
  load: LoadParameters;
  coupling: CouplingParameters;
  drive: DriveParameters;
  bus: Bus;
  range: CueRange;
  /** Positions of the mechanical stops. */
  stops: Record<StopName, number>;
  /** Drives of all features together. */
  driveCount: number;
  switched: boolean;
  regenerates: boolean;
  /** Whether the power is off while it holds: asked for, and honoured because it locks. */
  unpoweredHold: boolean;
  poweredAtRest: boolean;
  /** Whether it can stop between its end switches; null = not known. */
  positionFeedback: boolean | null;
  /** Measured over modelled hold current; 1 when none was measured. */
  holdCorrectionRatio: number;
  shakeRatio: number;
  backdrivesAtEffort: number | null;
}

/** Share of the weakest bus that a move or a hold may use. */
export const usableVoltageFraction = 0.95;

/** A candidate made ready: its model, how it locks, and the pack behind it. */
export interface PreparedCandidate {
  model: CandidateModel;
  locking: LockingClass;
  pack: PackModel;
  /** Pivots the tool proposed because the sheet left them blank. */
  proposedPivots: ChosenPivots['proposed'];
}
