import { emptySamples, type LoopSamples } from '../../src/simulate/loop-samples.js';
import { packCurve } from '../../src/simulate/pack-curve.js';
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

/** A pack by its plain constants; resistances of one cell. */
export interface BarePack extends Partial<PackModel> {
  openCircuitVoltagesV: readonly number[];
  cellOhm?: number;
  relaxingOhm?: number;
}

/** A pack with no end but its cut-off, unless a test says otherwise. */
export function barePack(parts: BarePack): PackModel {
  const { cellOhm = 0, relaxingOhm = 0, leadOhm = 0, seriesCount = 1, parallelCount = 1 } = parts;
  const { openCircuitVoltagesV } = parts;
  const packOhm = (seriesCount * cellOhm) / parallelCount;
  return {
    seriesCount,
    parallelCount,
    cellChargeC: 3600,
    relaxationTimeS: 60,
    leadOhm,
    curve: packCurve({ seriesCount, parallelCount, openCircuitVoltagesV, packOhm, relaxingOhm, leadOhm }),
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
