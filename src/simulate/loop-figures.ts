import type { Cue } from '../study/show.js';
import type { Load } from '../study/supply.js';
import type { CandidateModel } from './candidate-model.js';
import { type LoopSamples, packCurrentAtA, sampleKinds } from './loop-samples.js';
import type { BusDraw } from './motor-point.js';
import type { LoopEnergy } from './outcome.js';
import { loadsDraw } from './play-loop.js';

/** Window of the ten-second mean that protection boards and fuses feel. */
const windowS = 10;

/** Mean and peak of the whole pack current over one loop, at nominal voltage. */
export function loopCurrents(samples: LoopSamples, packNominalV: number) {
  let chargeC = 0;
  let peakA = 0;
  for (let k = 0; k < samples.count; k++) {
    const currentA = packCurrentAtA(samples, k, packNominalV);
    chargeC += currentA * samples.durationsS[k]!;
    peakA = Math.max(peakA, currentA);
  }
  return { meanA: chargeC / samples.totalS, peakA };
}

/**
 * Largest mean of a quantity over any window of the endlessly repeated loop.
 * @param quantity value of sample `k`, constant within it
 * @param lengthS of the window; may be longer than the loop
 */
export function worstWindowMean(
  samples: LoopSamples,
  lengthS: number,
  quantity: (k: number) => number,
): number {
  const { count, totalS } = samples;
  const ends = new Float64Array(count + 1);
  const sums = new Float64Array(count + 1);
  for (let k = 0; k < count; k++) {
    ends[k + 1] = ends[k]! + samples.durationsS[k]!;
    sums[k + 1] = sums[k]! + quantity(k) * samples.durationsS[k]!;
  }
  const sumUntil = (timeS: number): number => {
    const loops = Math.floor(timeS / totalS);
    const withinS = timeS - loops * totalS;
    let low = 0;
    let high = count;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (ends[middle]! <= withinS) low = middle;
      else high = middle;
    }
    const spanS = ends[high]! - ends[low]! || 1;
    const share = (withinS - ends[low]!) / spanS;
    return loops * sums[count]! + sums[low]! + share * (sums[high]! - sums[low]!);
  };
  // Whole loops that keep the backward window at positive times.
  const aheadS = Math.ceil(lengthS / totalS) * totalS;
  let largest = 0;
  for (let k = 0; k < count; k++) {
    // The best window starts or ends where the quantity steps.
    const forward = sumUntil(ends[k]! + lengthS) - sums[k]!;
    const backward = sumUntil(ends[k]! + aheadS) - sumUntil(ends[k]! + aheadS - lengthS);
    largest = Math.max(largest, forward / lengthS, backward / lengthS);
  }
  return largest;
}

/** Largest ten-second mean of the pack current, which is what fuses and protection boards feel. */
export const tenSecondMeanA = (samples: LoopSamples, packNominalV: number): number =>
  worstWindowMean(samples, windowS, (k) => packCurrentAtA(samples, k, packNominalV));

/** Largest share of time with current in the motor over any window of a length. */
export const worstOnShare = (samples: LoopSamples, lengthS: number): number =>
  worstWindowMean(samples, lengthS, (k) => (samples.motorCurrentsA[k]! > 0 ? 1 : 0));

/** Energy of one loop by consumer and by what the feature does, at the pack's nominal voltage. */
export function loopEnergy(
  model: CandidateModel,
  samples: LoopSamples,
  cues: readonly Cue[],
  loads: readonly Load[],
): LoopEnergy {
  const { bus, driveCount } = model;
  const byKind = [0, 0, 0];
  let idleJ = 0;
  const perLoad = loads.map((load) => ({ id: load.id, label: load.label, energyJ: 0 }));
  const draw: BusDraw = { powerW: 0, currentA: 0 };
  // What a regulator loses is charged to the drives behind it.
  const upstream = bus.regulated ? 1 / bus.regulatorEfficiency : 1;
  for (let k = 0; k < samples.count; k++) {
    const durationS = samples.durationsS[k]!;
    const driveW = samples.drivePowersW[k]! + samples.driveCurrentsA[k]! * bus.nominalV;
    byKind[samples.kinds[k]!]! += driveCount * driveW * upstream * durationS;
    idleJ += driveCount * samples.idleCurrentsA[k]! * bus.nominalV * upstream * durationS;
    const cue = cues[samples.cueIndexes[k]!]!;
    loads.forEach((load, index) => {
      loadsDraw([load], cue.lightsFraction, samples.kinds[k] === sampleKinds.move, bus.packNominalV, draw);
      perLoad[index]!.energyJ += (draw.powerW + draw.currentA * bus.packNominalV) * durationS;
    });
  }
  return {
    drivesMovingJ: byKind[sampleKinds.move]!,
    drivesHoldingJ: byKind[sampleKinds.hold]!,
    drivesRestingJ: byKind[sampleKinds.rest]!,
    drivesIdleJ: idleJ,
    loads: perLoad,
  };
}

/**
 * Share of written time that the cues really take: Σ written / Σ written/f with f the smaller of the two ratios
 * of written and played, per move cue.
 * @returns null when a move cannot be made or there is none
 */
export function cueFidelity(cues: readonly Cue[], stretches: readonly (number | null)[]): number | null {
  let writtenS = 0;
  let stretchedS = 0;
  let move = 0;
  for (const cue of cues) {
    if (cue.action !== 'move') continue;
    const stretch = stretches[move++];
    if (stretch === null || stretch === undefined) return null;
    writtenS += cue.durationS;
    stretchedS += cue.durationS * Math.max(stretch, 1 / stretch);
  }
  return writtenS > 0 ? writtenS / stretchedS : 1;
}

/** Hold figures, time-weighted over the hold cues; all drives together unless said otherwise. */
export interface HoldFigures {
  /** Motor current of one drive. */
  motorA: number;
  /** At the pack's nominal voltage, idle current included. */
  packA: number;
  /** At the drives' own bus, idle current left out, no measurement applied. */
  pulseModelA: number;
  /** The same with the measurement applied. */
  correctedA: number;
  /** Σ I_s·|T|/T_s as listed, at the drives' own bus. */
  linearRuleA: number;
}

/** Means over the hold cues of the loop; an unpowered hold counts as nothing. */
export function holdFigures(model: CandidateModel, samples: LoopSamples, cues: readonly Cue[]): HoldFigures {
  const { bus, drive, driveCount } = model;
  const sums = { motorA: 0, packA: 0, pulseModelA: 0, correctedA: 0, linearRuleA: 0 };
  let timeS = 0;
  for (let k = 0; k < samples.count; k++) {
    if (cues[samples.cueIndexes[k]!]!.action !== 'hold') continue;
    const durationS = samples.durationsS[k]!;
    timeS += durationS;
    if (model.unpoweredHold) continue;
    const driveA = samples.drivePowersW[k]! / bus.nominalV + samples.driveCurrentsA[k]!;
    const busA = driveCount * (driveA + samples.idleCurrentsA[k]!);
    const packA = bus.regulated ? (bus.nominalV * busA) / (bus.regulatorEfficiency * bus.packNominalV) : busA;
    sums.motorA += samples.motorCurrentsA[k]! * durationS;
    sums.packA += packA * durationS;
    sums.correctedA += driveCount * driveA * durationS;
    sums.pulseModelA += ((driveCount * driveA) / (model.holdCorrectionRatio || 1)) * durationS;
    sums.linearRuleA +=
      ((driveCount * drive.stallCurrentA * samples.efforts[k]!) / drive.listedStallEffort) * durationS;
  }
  if (timeS > 0) for (const name of Object.keys(sums) as (keyof typeof sums)[]) sums[name] /= timeS;
  return sums;
}
