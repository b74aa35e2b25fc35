import type { LoopSamples } from './loop-samples.js';
import type { EndReason } from './outcome.js';
import type { PackModel } from './pack-model.js';
import {
  advance,
  busAtV,
  busUnderLoadV,
  type CellState,
  endReasonOf,
  freshCell,
  marginV,
  relaxingOhmAt,
} from './supply-state.js';

/** How a run on one pack went. */
export interface RunDown {
  runtimeS: number;
  /** null when it outlasts the longest run. */
  endReason: EndReason | null;
  /** First time the bus is at or below the warning voltage; null when the run ends before. */
  warningS: number | null;
  endSocFraction: number;
}

/** Longest step in time of the reference solver; short enough that halving it changes runtimes by less than 0.01 %. */
export const longestStepS = 2;

/** A run that outlasts this is reported at this length: a pack that drives nothing never ends. */
export const longestRunS = 30 * 24 * 3600;

/** Called at every sample's end, for charts. */
export type RunDownListener = (timeS: number, busV: number, socFraction: number, loopIndex: number) => void;

/** The samples' step lengths and decays, worked out once for all loops. */
export interface Steps {
  counts: Int32Array;
  lengthsS: Float64Array;
  halfDecays: Float64Array;
  decays: Float64Array;
}

/** Cut samples into steps no longer than `longestS`. */
export function stepsOf(samples: LoopSamples, relaxationTimeS: number, longestS: number): Steps {
  const counts = new Int32Array(samples.count);
  const lengthsS = new Float64Array(samples.count);
  const halfDecays = new Float64Array(samples.count);
  const decays = new Float64Array(samples.count);
  for (let k = 0; k < samples.count; k++) {
    const count = Math.max(1, Math.ceil(samples.durationsS[k]! / longestS));
    const lengthS = samples.durationsS[k]! / count;
    counts[k] = count;
    lengthsS[k] = lengthS;
    halfDecays[k] = decay(lengthS / 2, relaxationTimeS);
    decays[k] = decay(lengthS, relaxationTimeS);
  }
  return { counts, lengthsS, halfDecays, decays };
}

/** exp(−t/τ); a cell without relaxation (τ = 0) settles at once. */
export const decay = (timeS: number, relaxationTimeS: number): number =>
  relaxationTimeS > 0 ? Math.exp(-timeS / relaxationTimeS) : 0;

/** Where a run stands: reused from call to call, so that a run can be continued. */
export interface RunState {
  cell: CellState;
  timeS: number;
  warningS: number | null;
  end: EndReason | null;
}

/** A run about to start from a full pack. */
export const startOfRun = (): RunState => ({ cell: freshCell(), timeS: 0, warningS: null, end: null });

/**
 * Play samples once, in time, until they are over or the run ends; the crossing inside a step is root-found.
 * Ends and warning are tested at both ends of every sample under its own load. (M17, M18)
 */
export function playOnce(
  pack: PackModel,
  samples: LoopSamples,
  steps: Steps,
  run: RunState,
  loopIndex = 0,
  listener?: RunDownListener,
): void {
  const { cell } = run;
  let { socFraction, relaxationV } = cell;
  let { timeS } = run;
  for (let k = 0; k < samples.count; k++) {
    const powerW = samples.packPowersW[k]!;
    const currentA = samples.packCurrentsA[k]!;
    const stepS = steps.lengthsS[k]!;
    const stepCount = steps.counts[k]!;
    const halfDecay = steps.halfDecays[k]!;
    const fullDecay = steps.decays[k]!;
    const chargePerA = stepS / (pack.cellChargeC * pack.parallelCount);
    let busV = busAtV(pack, socFraction, relaxationV, powerW, currentA);
    if (run.warningS === null && !(busV > pack.warningBusV)) run.warningS = timeS;
    if (!goesOn(pack, socFraction, busV, powerW, currentA)) {
      stop(pack, run, timeS, socFraction, relaxationV, powerW, currentA);
      return;
    }
    for (let step = 0; step < stepCount; step++) {
      // The same step as `advance`, on plain numbers: this loop runs a hundred thousand times.
      const startA = powerW / busV + currentA;
      const middleSoc = socFraction - (startA * chargePerA) / 2;
      const slowOhm = relaxingOhmAt(pack, middleSoc);
      const middleV = relaxationV * halfDecay + startA * slowOhm * (1 - halfDecay);
      const middleA = powerW / busAtV(pack, middleSoc, middleV, powerW, currentA) + currentA;
      const nextSoc = socFraction - middleA * chargePerA;
      const nextRelaxationV = relaxationV * fullDecay + middleA * slowOhm * (1 - fullDecay);
      const nextBusV = busAtV(pack, nextSoc, nextRelaxationV, powerW, currentA);
      if (run.warningS === null && !(nextBusV > pack.warningBusV)) {
        const from = { socFraction, relaxationV };
        run.warningS = timeS + crossing(pack, from, powerW, currentA, stepS, warningMarginV).timeS;
      }
      if (!goesOn(pack, nextSoc, nextBusV, powerW, currentA)) {
        const at = crossing(pack, { socFraction, relaxationV }, powerW, currentA, stepS, marginV);
        const { past } = at;
        stop(pack, run, timeS + at.timeS, past.socFraction, past.relaxationV, powerW, currentA);
        return;
      }
      socFraction = nextSoc;
      relaxationV = nextRelaxationV;
      busV = nextBusV;
      timeS += stepS;
    }
    listener?.(timeS, busV, socFraction, loopIndex);
  }
  cell.socFraction = socFraction;
  cell.relaxationV = relaxationV;
  run.timeS = timeS;
}

/** Whether none of the ends is reached. False too when the bus has collapsed (NaN). */
function goesOn(pack: PackModel, soc: number, busV: number, powerW: number, currentA: number): boolean {
  return (
    busV > pack.lowestBusV &&
    soc > pack.reserveFraction &&
    busV + (powerW / busV + currentA) * pack.leadOhm > pack.floorBusV
  );
}

function stop(
  pack: PackModel,
  run: RunState,
  timeS: number,
  socFraction: number,
  relaxationV: number,
  powerW: number,
  currentA: number,
): void {
  run.cell.socFraction = socFraction;
  run.cell.relaxationV = relaxationV;
  run.timeS = timeS;
  run.end = endReasonOf(pack, run.cell, powerW, currentA);
  if (run.warningS !== null && run.warningS > timeS) run.warningS = null;
}

function warningMarginV(pack: PackModel, state: CellState, powerW: number, currentA: number): number {
  const busV = busUnderLoadV(pack, state, powerW, currentA);
  return Number.isNaN(busV) ? Number.NEGATIVE_INFINITY : busV - pack.warningBusV;
}

/** When, inside a step, a margin is used up: bisection on the length of the step. */
function crossing(
  pack: PackModel,
  from: CellState,
  powerW: number,
  currentA: number,
  stepS: number,
  margin: typeof marginV,
): { timeS: number; past: CellState } {
  let before = 0;
  let after = stepS;
  const past = freshCell();
  const tau = pack.relaxationTimeS;
  const play = (timeS: number): void => {
    past.socFraction = from.socFraction;
    past.relaxationV = from.relaxationV;
    advance(pack, past, powerW, currentA, timeS, decay(timeS / 2, tau), decay(timeS, tau));
  };
  for (let halving = 0; halving < 24; halving++) {
    const middle = (before + after) / 2;
    play(middle);
    if (margin(pack, past, powerW, currentA) > 0) before = middle;
    else after = middle;
  }
  play(after);
  return { timeS: after, past };
}

/** Prepare samples for playing. */
const stepsFor = (samples: LoopSamples, pack: PackModel): Steps =>
  stepsOf(samples, pack.relaxationTimeS, longestStepS);

/**
 * Runtime on one pack, every segment played in time. (M18, `stepped`)
 * @param leadIn cues played once before the loop; may be empty
 */
export function steppedRunDown(
  pack: PackModel,
  leadIn: LoopSamples,
  loop: LoopSamples,
  listener?: RunDownListener,
): RunDown {
  const run = startOfRun();
  playOnce(pack, leadIn, stepsFor(leadIn, pack), run, -1, listener);
  const steps = stepsFor(loop, pack);
  for (let index = 0; run.end === null && run.timeS < longestRunS; index++) {
    playOnce(pack, loop, steps, run, index, listener);
  }
  return finished(run);
}

/** The result of a run that has ended, or outlasted the longest run. */
export function finished(run: RunState): RunDown {
  return {
    runtimeS: run.timeS,
    endReason: run.end,
    warningS: run.warningS,
    endSocFraction: run.cell.socFraction,
  };
}
