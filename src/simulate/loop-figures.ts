import type { Cue } from '../study/show.js';
import type { Load } from '../study/supply.js';
import type { CandidateModel } from './candidate-model.js';
import { modelledHoldDraw } from './hold.js';
import { type LoopSamples, packCurrentAtA, sampleKinds } from './loop-samples.js';
import type { BusDraw } from './motor-point.js';
import type { LoopEnergy } from './outcome.js';
import { loadsDraw } from './play-loop.js';

/** Window of the ten-second mean that protection boards and fuses feel. */
const windowS = 10;

/** Mean of the whole pack current over one loop, at a bus voltage. */
export function meanCurrentA(samples: LoopSamples, busV: number): number {
  let chargeC = 0;
  for (let k = 0; k < samples.count; k++)
    chargeC += packCurrentAtA(samples, k, busV) * samples.durationsS[k]!;
  return chargeC / samples.totalS;
}

/**
 * Largest mean of a quantity over any window of the endlessly repeated loop.
 * @param quantity value of sample `k`, constant within it
 * @param lengthS of the window; may be longer than the loop
 */
export function worstWindowMean(
  { count, durationsS }: Pick<LoopSamples, 'count' | 'durationsS'>,
  lengthS: number,
  quantity: (k: number) => number,
): number {
  const ends = new Float64Array(count + 1);
  const sums = new Float64Array(count + 1);
  for (let k = 0; k < count; k++) {
    ends[k + 1] = ends[k]! + durationsS[k]!;
    sums[k + 1] = sums[k]! + quantity(k) * durationsS[k]!;
  }
  const totalS = ends[count]!;
  const total = sums[count]!;
  // Sum up to a time that only grows from call to call, in the endlessly repeated loop.
  const runningSum = () => {
    let loops = 0;
    let k = 0;
    return (timeS: number): number => {
      for (;;) {
        const withinS = timeS - loops * totalS;
        if (withinS <= ends[k + 1]!)
          return loops * total + sums[k]! + quantity(k) * Math.max(0, withinS - ends[k]!);
        if (k < count - 1) k++;
        else {
          k = 0;
          loops++;
        }
      }
    };
  };
  const windowEnd = runningSum();
  const windowStart = runningSum();
  // Whole loops ahead, so that a window that ends at a step starts at a positive time.
  const ahead = Math.ceil(lengthS / totalS);
  let largest = 0;
  for (let k = 0; k < count; k++) {
    // The best window starts or ends where the quantity steps.
    const forward = windowEnd(ends[k]! + lengthS) - sums[k]!;
    const backward = ahead * total + sums[k]! - windowStart(ends[k]! + ahead * totalS - lengthS);
    largest = Math.max(largest, forward / lengthS, backward / lengthS);
  }
  return largest;
}

/**
 * Largest mean of a quantity over any window of a show: its lead-in once, then its loop for ever.
 * @param quantity value of sample `k` of a list, constant within it
 */
function worstInShow(
  leadIn: LoopSamples,
  loop: LoopSamples,
  lengthS: number,
  quantity: (samples: LoopSamples, k: number) => number,
): number {
  const repeated = worstWindowMean(loop, lengthS, (k) => quantity(loop, k));
  if (leadIn.count === 0) return repeated;
  // Played once, and then nothing for as long as the window: so none reaches round from the end to the start.
  const lists = [leadIn, ...Array<LoopSamples>(Math.ceil(lengthS / loop.totalS)).fill(loop)];
  const values: number[] = [];
  const durationsS: number[] = [];
  for (const list of lists) {
    for (let k = 0; k < list.count; k++) {
      values.push(quantity(list, k));
      durationsS.push(list.durationsS[k]!);
    }
  }
  values.push(0);
  durationsS.push(lengthS);
  const once = { count: values.length, durationsS: Float64Array.from(durationsS) };
  return Math.max(
    repeated,
    worstWindowMean(once, lengthS, (k) => values[k]!),
  );
}

/** Largest ten-second mean of the pack current, which is what fuses and protection boards feel. */
export const tenSecondMeanA = (leadIn: LoopSamples, loop: LoopSamples, packNominalV: number): number =>
  worstInShow(leadIn, loop, windowS, (samples, k) => packCurrentAtA(samples, k, packNominalV));

/** Largest share of time with current in the motor over any window of a length. */
export const worstOnShare = (leadIn: LoopSamples, loop: LoopSamples, lengthS: number): number =>
  worstInShow(leadIn, loop, lengthS, (samples, k) => (samples.motorCurrentsA[k]! > 0 ? 1 : 0));

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
  // What a regulator loses is charged to the drives behind it.
  const upstream = bus.regulated ? 1 / bus.regulatorEfficiency : 1;
  const movingS = new Float64Array(cues.length);
  const stillS = new Float64Array(cues.length);
  for (let k = 0; k < samples.count; k++) {
    const durationS = samples.durationsS[k]!;
    const driveW = samples.drivePowersW[k]! + samples.driveCurrentsA[k]! * bus.nominalV;
    byKind[samples.kinds[k]!]! += driveCount * driveW * upstream * durationS;
    idleJ += driveCount * samples.idleCurrentsA[k]! * bus.nominalV * upstream * durationS;
    const times = samples.kinds[k] === sampleKinds.move ? movingS : stillS;
    times[samples.cueIndexes[k]!]! += durationS;
  }
  const draw: BusDraw = { powerW: 0, currentA: 0 };
  const energyOf = (load: Load): number => {
    let energyJ = 0;
    cues.forEach((cue, index) => {
      for (const [moving, times] of [[true, movingS] as const, [false, stillS] as const]) {
        loadsDraw([load], cue.lightsFraction, moving, bus.packNominalV, draw);
        energyJ += (draw.powerW + draw.currentA * bus.packNominalV) * times[index]!;
      }
    });
    return energyJ;
  };
  return {
    drivesMovingJ: byKind[sampleKinds.move]!,
    drivesHoldingJ: byKind[sampleKinds.hold]!,
    drivesRestingJ: byKind[sampleKinds.rest]!,
    drivesIdleJ: idleJ,
    loads: loads.map((load) => ({ id: load.id, label: load.label, energyJ: energyOf(load) })),
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
  /** The pulse model and the linear rule as `packA` stands: at the pack, idle current included. */
  packPulseModelA: number;
  packLinearRuleA: number;
}

/** Means over the hold cues of the loop; an unpowered hold counts as nothing. */
export function holdFigures(model: CandidateModel, samples: LoopSamples, cues: readonly Cue[]): HoldFigures {
  const { bus, drive, driveCount } = model;
  const sums = {
    motorA: 0,
    packA: 0,
    pulseModelA: 0,
    correctedA: 0,
    linearRuleA: 0,
    packPulseModelA: 0,
    packLinearRuleA: 0,
  };
  const onPackA = (busA: number) =>
    bus.regulated ? (bus.nominalV * busA) / (bus.regulatorEfficiency * bus.packNominalV) : busA;
  const modelled: BusDraw = { powerW: 0, currentA: 0 };
  let timeS = 0;
  for (let k = 0; k < samples.count; k++) {
    if (cues[samples.cueIndexes[k]!]!.action !== 'hold') continue;
    const durationS = samples.durationsS[k]!;
    timeS += durationS;
    if (model.unpoweredHold) continue;
    const driveA = samples.drivePowersW[k]! / bus.nominalV + samples.driveCurrentsA[k]!;
    const idleA = driveCount * samples.idleCurrentsA[k]!;
    const correctedA = driveCount * driveA;
    modelledHoldDraw(model, samples.motorCurrentsA[k]!, modelled);
    const pulseModelA = driveCount * (modelled.powerW / bus.nominalV + modelled.currentA);
    const linearRuleA = (driveCount * drive.stallCurrentA * samples.efforts[k]!) / drive.listedStallEffort;
    sums.motorA += samples.motorCurrentsA[k]! * durationS;
    sums.packA += onPackA(correctedA + idleA) * durationS;
    sums.correctedA += correctedA * durationS;
    sums.pulseModelA += pulseModelA * durationS;
    sums.linearRuleA += linearRuleA * durationS;
    sums.packPulseModelA += onPackA(pulseModelA + idleA) * durationS;
    sums.packLinearRuleA += onPackA(linearRuleA + idleA) * durationS;
  }
  if (timeS > 0) for (const name of Object.keys(sums) as (keyof typeof sums)[]) sums[name] /= timeS;
  return sums;
}
