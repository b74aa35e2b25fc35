/** Everything a candidate can be judged on. */
export const criterionIds = [
  'runtime',
  'runtime_p10',
  'hold_power',
  'peak_current',
  'body_mass',
  'feature_mass',
  'cue_fidelity',
  'torque_margin',
  'winding_temperature',
  'case_temperature',
  'noise',
  'cost',
  'rework_hours',
  'swap_minutes',
  'fall_energy',
  'crush_force',
  'push_force',
  'fits',
  'voltage',
] as const;
/** A criterion, as criteria.csv names it. */
export type CriterionId = (typeof criterionIds)[number];

/** A hard limit in SI (money and counts as they are). */
export interface Limit {
  direction: 'at-least' | 'at-most';
  bound: number;
}

/** One line of criteria.csv, or of the default set. Values in SI. */
export interface Criterion {
  id: CriterionId;
  /** 0 when the criterion only carries a limit. */
  weightScore: number;
  worthless: number | null;
  worthFull: number | null;
  must: Limit | null;
  /** Who set it: the file, or the default set. */
  origin: 'given' | 'assumed';
  note: string;
  /** Set where it does not count, because a cell that it rests on is blank; it then weighs 0. */
  leftOut?: LeftOut;
}

/** What keeps a criterion out of the score. */
export interface LeftOut {
  /** Its weight in the study. */
  weightScore: number;
  /** Cells to fill in before it counts. */
  blanks: { candidate: string; field: string }[];
}

/** Something measured on the baseline. */
export type MeasuredQuantity =
  | 'runtime'
  | 'hold_current'
  | 'rest_current'
  | 'move_time'
  | 'loop_charge'
  | 'case_temperature';

/** One reading of measured.csv. */
export interface Measurement {
  quantity: MeasuredQuantity;
  /** SI. */
  value: number;
  /** Half width of the 95 % interval, SI. */
  halfWidth: number;
  note: string;
}

/** Weights that somebody else might set: the same candidates seen by whoever carries, builds, runs or pays. */
export interface ViewWeights {
  id: string;
  label: string;
  /** What counts in this view, with scales; limits are the study's own. */
  criteria: Criterion[];
}

/** Words for how much a criterion counts, and the units of weight that each means: every step doubles. */
export const importanceSteps = { none: 0, little: 1, some: 2, much: 4, decisive: 8 } as const;
