import { emptySamples, type LoopSamples } from '../../src/simulate/loop-samples.js';
import type { PackModel } from '../../src/simulate/pack-model.js';

/** One stretch of constant load on a pack. */
export interface Segment {
  durationS: number;
  powerW?: number;
  currentA?: number;
}

/** Samples that only load the pack, for tests of the run-down alone. */
export function samplesOf(segments: readonly Segment[]): LoopSamples {
  const samples = emptySamples(segments.length);
  segments.forEach((segment, k) => {
    samples.durationsS[k] = segment.durationS;
    samples.packPowersW[k] = segment.powerW ?? 0;
    samples.packCurrentsA[k] = segment.currentA ?? 0;
    samples.cueIndexes[k] = k;
    samples.totalS += segment.durationS;
  });
  samples.count = segments.length;
  return samples;
}

/** A pack with no end but its cut-off, unless a test says otherwise. */
export function barePack(
  parts: Partial<PackModel> & Pick<PackModel, 'openCircuitVoltagesV'> & { cellOhm?: number },
): PackModel {
  const { cellOhm = 0, seriesCount = 1, parallelCount = 1 } = parts;
  return {
    seriesCount: 1,
    parallelCount: 1,
    cellChargeC: 3600,
    packOhm: (seriesCount * cellOhm) / parallelCount,
    relaxingOhm: 0,
    relaxationTimeS: 60,
    leadOhm: 0,
    cutOffBusV: 0,
    warningBusV: 0,
    controllerBusV: Number.NEGATIVE_INFINITY,
    regulatorBusV: Number.NEGATIVE_INFINITY,
    floorBusV: Number.NEGATIVE_INFINITY,
    lowestBusV: parts.cutOffBusV ?? 0,
    reserveFraction: Number.NEGATIVE_INFINITY,
    ...parts,
  };
}
