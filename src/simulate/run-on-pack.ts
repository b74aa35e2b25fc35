import { meanCurrentA } from './loop-figures.js';
import type { LoopSamples } from './loop-samples.js';
import type { RunDownSeries } from './outcome.js';
import type { PackModel } from './pack-model.js';
import { longestStepS, type RunDown, type RunDownListener, steppedRunDown } from './run-down.js';
import { averagedRunDown } from './run-down-averaged.js';
import { busAtV } from './supply-state.js';

/** Points of the run-down chart. */
const pointCount = 200;

/** More steps than this and the averaged solver serves: a drive that hardly draws runs for days. */
const mostSteps = 400_000;

/** The run on one pack with its chart. */
export interface PackRun {
  runDown: RunDown;
  series: RunDownSeries;
}

/**
 * Runtime on one pack: stepped where that is wanted and quick enough, else averaged. (M18)
 * @param exactly false for quick comparisons
 */
export function runOnPack(pack: PackModel, leadIn: LoopSamples, loop: LoopSamples, exactly = true): PackRun {
  const nominalV = busAtV(pack, 0.5, 0, 0, 0);
  const meanA = meanCurrentA(loop, nominalV);
  const longestGuessS = (pack.cellChargeC * pack.parallelCount) / meanA;
  const loops = Math.max(1, Math.ceil(longestGuessS / loop.totalS));
  // Every sample is cut into steps of its own: one more than its length asks for, at the most.
  const stepsPerLoop = loop.count + loop.totalS / longestStepS;
  const series = new SeriesRecorder(Math.ceil(loops / pointCount));
  if (!exactly || !(loops * stepsPerLoop < mostSteps)) {
    return { runDown: averagedRunDown(pack, leadIn, loop), series: series.result };
  }
  const runDown = steppedRunDown(pack, leadIn, loop, series.listener);
  series.finish(runDown.runtimeS);
  return { runDown, series: series.result };
}

/** Keeps the lowest and the mean voltage of every so-many loops. */
class SeriesRecorder {
  readonly result: RunDownSeries = { timesS: [], lowestVoltagesV: [], meanVoltagesV: [], socFractions: [] };
  private group = 0;
  private lowestV = Number.POSITIVE_INFINITY;
  private sumVs = 0;
  private startS = 0;
  private lastS = 0;
  private soc = 1;

  constructor(private readonly loopsPerPoint: number) {}

  readonly listener: RunDownListener = (timeS, busV, socFraction, loopIndex) => {
    const group = Math.floor(loopIndex / this.loopsPerPoint);
    if (group !== this.group && this.lastS > this.startS) this.push();
    this.group = group;
    this.lowestV = Math.min(this.lowestV, busV);
    this.sumVs += busV * (timeS - this.lastS);
    this.lastS = timeS;
    this.soc = socFraction;
  };

  private push(): void {
    const { result } = this;
    result.timesS.push((this.startS + this.lastS) / 2);
    result.lowestVoltagesV.push(this.lowestV);
    result.meanVoltagesV.push(this.sumVs / (this.lastS - this.startS));
    result.socFractions.push(this.soc);
    this.lowestV = Number.POSITIVE_INFINITY;
    this.sumVs = 0;
    this.startS = this.lastS;
  }

  finish(timeS: number): void {
    if (this.lastS > this.startS) this.push();
    const { result } = this;
    const last = result.timesS.length - 1;
    // The line ends where the run ends.
    if (last >= 0) result.timesS[last] = timeS;
  }
}
