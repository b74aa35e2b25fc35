import type { Place } from '../problem/issue.js';
import type { Spread } from '../quantity/spread.js';

/** Where a number of the study comes from. */
export type Origin = 'given' | 'assumed' | 'derived';

/**
 * The history of one value in the study. `path` addresses the number inside the study:
 * `feature.massKg`, `pack.capacityC`, `candidates.worm-a.sheet.stallEffort`, `loads.eyes.powerW`.
 */
export interface Provenance {
  path: string;
  /** The name a user knows: `feature.mass`, `stall_torque`. */
  field: string;
  /** Candidate, pack or load the value belongs to; null for the study itself. */
  owner: string | null;
  origin: Origin;
  /** As written in the file (`25 kg·cm ±10%`); null when nothing was written. */
  written: string | null;
  /** Value in the unit a person reads, for the input pages: `2.45 N·m`. */
  shown: string;
  /** SI value, or the text or choice that was taken. */
  value: number | string | boolean | null;
  /** Why this value, when assumed or derived: a rule, a table, a source. Empty when given. */
  basis: string;
  spread: Spread | null;
  place: Place | null;
}
