/**
 * What every draw yields for every candidate, in this order. SI; NaN = does not occur in that draw.
 * `feasible` is 1 where no move, hold, linkage or cord fails, else 0; `locking` 2 = holds when shaken, 1 = at rest,
 * 0 = does not hold.
 */
export const outcomeNames = [
  'feasible',
  'runtimeS',
  'warningS',
  'loopS',
  'cueFidelityRatio',
  'meanPackCurrentA',
  'peakPackCurrentA',
  'startUpCurrentA',
  'holdPackCurrentA',
  'holdPowerW',
  'torqueMarginRatio',
  'holdEffortRatio',
  'locking',
  'windingTemperatureK',
  'caseTemperatureK',
  'settledHoldWindingK',
  'fallS',
  'tipSpeedMPerS',
  'fallEnergyJ',
  'crushForceN',
  'pushForceN',
  'bodyMassKg',
  'featureMassKg',
  'cost',
  'reworkTimeS',
  'efficiencyClipped',
] as const;
export type OutcomeName = (typeof outcomeNames)[number];

/** One uncertain input of the study, as sampled. */
export interface SampledInput {
  /** Path of the number inside the study, as in its provenance. */
  path: string;
  /** Field name a user knows, and the candidate, pack or load it belongs to; null for the study's own. */
  field: string;
  owner: string | null;
  /** Whether all candidates see the same draw: feature, pack, loads, air. */
  shared: boolean;
  /** One value per draw, SI. */
  values: Float64Array;
}

/** All draws of a study. Outcome `o` of candidate `c` in draw `i` is `outcomes[c][o][i]`. */
export interface Ensemble {
  drawCount: number;
  candidateIds: string[];
  outcomes: Float64Array[][];
  inputs: SampledInput[];
  scheme: EnsembleScheme;
}

/** How the draws were made, so that they can be made again. */
export interface EnsembleScheme {
  generator: string;
  seed: number;
  /** Paths drawn from the shifted Sobol' sequence; the rest are Latin hypercube columns. */
  sobolPaths: string[];
}

/** Index of an outcome in `outcomes[c]`. */
export const outcomeIndex: Record<OutcomeName, number> = Object.fromEntries(
  outcomeNames.map((name, index) => [name, index]),
) as Record<OutcomeName, number>;
