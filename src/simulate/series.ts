import type { CandidateModel } from './candidate-model.js';
import { type LoopSamples, packCurrentAtA, sampleKinds } from './loop-samples.js';
import type { LoopSeries } from './outcome.js';

/** Every so-many samples of a move is drawn. */
const stride = 5;

/** Effort needed and available, and pack current, over one loop, for charts. */
export function loopSeries(model: CandidateModel, samples: LoopSamples): LoopSeries {
  const series: LoopSeries = {
    timesS: [],
    positions: [],
    driveEfforts: [],
    availableEfforts: [],
    packCurrentsA: [],
  };
  let timeS = 0;
  for (let k = 0; k < samples.count; k++) {
    const durationS = samples.durationsS[k]!;
    const moving = samples.kinds[k] === sampleKinds.move;
    const lastOfCue = k === samples.count - 1 || samples.cueIndexes[k + 1] !== samples.cueIndexes[k];
    if (!moving) {
      push(series, model, samples, k, timeS);
      push(series, model, samples, k, timeS + durationS);
    } else if (k % stride === 0 || lastOfCue) {
      push(series, model, samples, k, timeS + durationS / 2);
    }
    timeS += durationS;
  }
  return series;
}

function push(
  series: LoopSeries,
  model: CandidateModel,
  samples: LoopSamples,
  k: number,
  timeS: number,
): void {
  const { drive, bus } = model;
  const currentA = (bus.weakV - drive.speedConstant * samples.speeds[k]!) / drive.resistanceOhm;
  const available = drive.forwardEfficiency * drive.speedConstant * (currentA - drive.noLoadCurrentA);
  series.timesS.push(timeS);
  series.positions.push(samples.positions[k]!);
  series.driveEfforts.push(samples.efforts[k]!);
  series.availableEfforts.push(Math.max(0, available));
  series.packCurrentsA.push(packCurrentAtA(samples, k, bus.packNominalV));
}
