import { driveEffortPushing, speedRatio } from '../physics/linkage.js';
import { peakEffort, staticEffort } from '../physics/load.js';
import type { CandidateModel } from './candidate-model.js';

/** Points over the range, ends included. */
const pointCount = 201;

/** A balanced feature needs next to no effort; a margin beyond this tells nothing more and would not be a number. */
export const largestMargin = 1000;

/** Smallest share of effort left over the range, and the lowest static effort on the way. */
export interface EffortSearch {
  /** Effort available from the weakest bus over the largest effort needed. */
  marginRatio: number;
  marginAt: number;
  /** Lowest static effort of the feature, friction left out: below 0 a cord goes slack. */
  lowestStatic: number;
  lowestAt: number;
}

/**
 * Search the whole cue range for the largest effort needed, walking and gust included. (M3; the peak is often
 * at an end of the travel)
 */
export function searchEfforts(model: CandidateModel): EffortSearch {
  const { load, coupling, drive, bus, range } = model;
  const availableEffort =
    drive.forwardEfficiency * drive.speedConstant * (bus.weakV / drive.resistanceOhm - drive.noLoadCurrentA);
  const search: EffortSearch = {
    marginRatio: largestMargin,
    marginAt: range.lowest,
    lowestStatic: Number.POSITIVE_INFINITY,
    lowestAt: range.lowest,
  };
  for (let i = 0; i < pointCount; i++) {
    const position = range.lowest + ((range.highest - range.lowest) * i) / (pointCount - 1);
    const ratio = speedRatio(coupling, position);
    const needed = Math.abs(driveEffortPushing(peakEffort(load, position), ratio, coupling));
    const margin = availableEffort / needed;
    if (margin < search.marginRatio) {
      search.marginRatio = margin;
      search.marginAt = position;
    }
    const still = staticEffort(load, position);
    if (still < search.lowestStatic) {
      search.lowestStatic = still;
      search.lowestAt = position;
    }
  }
  return search;
}
