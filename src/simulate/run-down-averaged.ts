import type { LoopSamples } from './loop-samples.js';
import type { PackModel } from './pack-model.js';
import {
  decay,
  finished,
  longestRunS,
  playOnce,
  type RunDown,
  type RunState,
  type Steps,
  startOfRun,
  stepsOf,
} from './run-down.js';
import { busUnderLoadV, type CellState, freshCell, marginV, relaxingOhmAt } from './supply-state.js';

/** How many whole loops before the predicted end (or warning) the cue-by-cue replay starts. */
const replayLoops = 2;

/**
 * Near collapse a larger relaxation voltage draws more current, which relaxes it ever more slowly, so it lags far
 * behind its periodic value. A run that collapses is therefore replayed over this last share of its length.
 */
const collapseReplayFraction = 0.35;

/** Before so many time constants the relaxation voltage is not periodic yet: such a replay starts with the run. */
const settlingTimes = 5;

/** Rounds in which the relaxation voltage and the currents of a loop have to agree, and how closely. */
const mostRounds = 12;
const agreedV = 2e-5;

/** How far below the end the loop is asked whether it collapses there. */
const collapseProbe = 0.005;

/** What one loop looks like at a state of charge, once the relaxation voltage repeats from loop to loop. */
interface LoopAverage {
  /** Mean current of one cell. */
  cellA: number;
  /** Relaxation voltage at the start of the loop. */
  startV: number;
  /** Smallest margin to any end, and to the warning, at both ends of every sample. */
  marginV: number;
  warningMarginV: number;
}

/** A point of the averaged run: time at which the charge is reached, and the loop there. */
interface Node {
  soc: number;
  timeS: number;
  cellA: number;
}

/** States of charge the averaged run steps over, besides its own start: the knots of the discharge curve. */
const knots = [
  0.975, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 0.35, 0.3, 0.25, 0.2, 0.15, 0.1,
  0.05, 0.02, 0,
];

/**
 * Runtime on one pack from the loop's mean current over the state of charge, with the last loops before the end
 * and before the warning played cue by cue. (M18, `averaged`)
 *
 * Agrees with the stepped solver within 0.5 %; a run too short to average is stepped from the start.
 * @param longestReplayStepS longest time step of the replayed part
 */
export function averagedRunDown(
  pack: PackModel,
  leadIn: LoopSamples,
  loop: LoopSamples,
  longestReplayStepS = 0.5,
): RunDown {
  const leadInSteps = stepsOf(leadIn, pack.relaxationTimeS, longestReplayStepS);
  const loopSteps = stepsOf(loop, pack.relaxationTimeS, longestReplayStepS);
  const run = startOfRun();
  playOnce(pack, leadIn, leadInSteps, run);
  if (run.end !== null) return finished(run);
  const start: RunState = { ...run, cell: { ...run.cell } };
  const averager = new LoopAverager(pack, loop);
  const prediction = predict(averager, start);
  const endTimeS = prediction.endTimeS;
  if (!(endTimeS < longestRunS)) {
    return finished({ ...start, timeS: longestRunS, warningS: prediction.warningTimeS });
  }
  const replayFrom = (timeS: number): RunState => {
    const before = prediction.collapses
      ? Math.max(replayLoops, Math.ceil((collapseReplayFraction * timeS) / loop.totalS))
      : replayLoops;
    const loops = Math.floor((timeS - start.timeS) / loop.totalS) - before;
    if (loops * loop.totalS < settlingTimes * pack.relaxationTimeS)
      return { ...start, cell: { ...start.cell } };
    const fromS = start.timeS + loops * loop.totalS;
    const soc = socAt(prediction.nodes, fromS, pack.cellChargeC);
    const relaxationV = averager.at(soc).startV;
    return { cell: { socFraction: soc, relaxationV }, timeS: fromS, warningS: null, end: null };
  };
  const last = playToEnd(pack, loop, loopSteps, replayFrom, start.timeS, endTimeS);
  const lastStartS = Math.max(start.timeS, last.fromS);
  let warningS = start.warningS;
  if (warningS === null && prediction.warningTimeS !== null && prediction.warningTimeS < lastStartS) {
    warningS = playToWarning(pack, loop, loopSteps, replayFrom(prediction.warningTimeS));
  }
  return { ...finished(last.run), warningS: warningS ?? last.run.warningS };
}

/**
 * Replay until the run ends; start earlier if it turns out to end within the first replayed loop.
 * @param startS when the loop begins for the first time, after the lead-in: nothing is replayed from before it
 */
function playToEnd(
  pack: PackModel,
  loop: LoopSamples,
  steps: Steps,
  replayFrom: (timeS: number) => RunState,
  startS: number,
  endTimeS: number,
): { run: RunState; fromS: number } {
  let aimS = endTimeS;
  for (;;) {
    const run = replayFrom(aimS);
    const fromS = run.timeS;
    while (run.end === null && run.timeS < longestRunS) playOnce(pack, loop, steps, run);
    const endedAtOnce = run.timeS - fromS < loop.totalS;
    const canGoBack = aimS - startS > loop.totalS && fromS - startS > loop.totalS;
    if (!endedAtOnce || !canGoBack) return { run, fromS };
    aimS = fromS;
  }
}

function playToWarning(pack: PackModel, loop: LoopSamples, steps: Steps, from: RunState): number | null {
  const run = from;
  while (run.end === null && run.warningS === null && run.timeS < longestRunS) {
    playOnce(pack, loop, steps, run);
  }
  return run.warningS;
}

/** Integrate the mean current over the state of charge until no margin is left. */
function predict(averager: LoopAverager, start: RunState) {
  const nodes: Node[] = [];
  // A rested cell draws less at first; what that saves is put on top of its charge.
  let soc = start.cell.socFraction + averager.savedAtFirst(start.cell);
  let here = averager.at(soc);
  let timeS = start.timeS;
  let warningTimeS: number | null = here.warningMarginV <= 0 ? timeS : null;
  nodes.push({ soc, timeS, cellA: here.cellA });
  let collapses = false;
  if (!(here.marginV > 0)) return { nodes, endTimeS: timeS, warningTimeS, collapses };
  for (const knot of knots) {
    if (knot >= soc) continue;
    const next = averager.at(knot);
    const end = next.marginV > 0 ? knot : averager.crossing(soc, knot, 'marginV');
    const at = next.marginV > 0 ? next : averager.at(end);
    if (warningTimeS === null && !(at.warningMarginV > 0)) {
      const warningSoc = averager.crossing(soc, end, 'warningMarginV');
      warningTimeS = timeS + averager.timeBetweenS(soc, here.cellA, warningSoc);
    }
    timeS += averager.timeBetweenS(soc, here.cellA, end);
    nodes.push({ soc: end, timeS, cellA: at.cellA });
    if (!(next.marginV > 0)) {
      collapses = averager.collapsesBelow(end);
      break;
    }
    soc = end;
    here = at;
    if (timeS > longestRunS) break;
  }
  return { nodes, endTimeS: Math.min(timeS, longestRunS), warningTimeS, collapses };
}

/** State of charge at a time of the averaged run: current taken linear in charge between nodes. */
function socAt(nodes: readonly Node[], timeS: number, cellChargeC: number): number {
  let upper = nodes.length - 1;
  while (upper > 1 && nodes[upper - 1]!.timeS > timeS) upper--;
  const from = nodes[upper - 1]!;
  const to = nodes[upper] ?? from;
  const share = (timeS - from.timeS) / (to.timeS - from.timeS || 1);
  const span = from.soc - to.soc;
  // dsoc/dt follows the current, which changes a little over the interval: one corrector step.
  const middleA = from.cellA + (share / 2) * (to.cellA - from.cellA);
  const scale = (span * cellChargeC) / ((to.timeS - from.timeS || 1) * ((from.cellA + to.cellA) / 2));
  return from.soc - ((timeS - from.timeS) * middleA * scale) / cellChargeC;
}

/** Means and margins of one loop at a given state of charge. Keeps its arrays between calls. */
class LoopAverager {
  private readonly decays: Float64Array;
  private readonly halfDecays: Float64Array;
  private readonly cellCurrentsA: Float64Array;
  private readonly state: CellState = freshCell();
  private relaxationGuessV = 0;

  constructor(
    private readonly pack: PackModel,
    private readonly loop: LoopSamples,
  ) {
    const tau = pack.relaxationTimeS;
    this.decays = Float64Array.from({ length: loop.count }, (_, k) => decay(loop.durationsS[k]!, tau));
    this.halfDecays = Float64Array.from({ length: loop.count }, (_, k) =>
      decay(loop.durationsS[k]! / 2, tau),
    );
    this.cellCurrentsA = new Float64Array(loop.count);
  }

  /** The loop at a state of charge; currents and relaxation voltage are repeated until they agree. */
  at(soc: number): LoopAverage {
    this.state.socFraction = soc;
    // Of one cell, for cell currents.
    this.relaxOhm = relaxingOhmAt(this.pack, soc) * this.pack.parallelCount;
    this.guessCurrents();
    let startV = this.periodicStartV();
    for (let round = 0; round < mostRounds; round++) {
      this.currents(startV);
      const againV = this.periodicStartV();
      const change = Math.abs(againV - startV);
      startV = againV;
      if (change < agreedV) break;
    }
    return this.averages(startV);
  }

  /**
   * Share of charge that a loop starting from a given relaxation voltage saves until that voltage has reached its
   * periodic value: the difference of the mean currents over one time constant.
   */
  savedAtFirst(start: CellState): number {
    const periodicA = this.at(start.socFraction).cellA;
    this.state.socFraction = start.socFraction;
    this.state.relaxationV = start.relaxationV;
    let chargeC = 0;
    for (let k = 0; k < this.loop.count; k++) chargeC += this.cellCurrentA(k) * this.loop.durationsS[k]!;
    const savedA = periodicA - chargeC / this.loop.totalS;
    return (savedA * this.pack.relaxationTimeS) / this.pack.cellChargeC;
  }

  /** First currents of a state: with the mean relaxation voltage of a fuller one, so never too large. */
  private guessCurrents(): void {
    this.state.relaxationV = this.relaxationGuessV;
    for (let k = 0; k < this.loop.count; k++) this.cellCurrentsA[k] = this.cellCurrentA(k);
  }

  /** Currents of all samples, each with the relaxation voltage in its middle. */
  private currents(startV: number): void {
    const { loop, state } = this;
    let relaxationV = startV;
    for (let k = 0; k < loop.count; k++) {
      const settledV = this.cellCurrentsA[k]! * this.relaxOhm;
      state.relaxationV = settledV + (relaxationV - settledV) * this.halfDecays[k]!;
      const cellA = this.cellCurrentA(k);
      this.cellCurrentsA[k] = cellA;
      const nextV = cellA * this.relaxOhm;
      relaxationV = nextV + (relaxationV - nextV) * this.decays[k]!;
    }
  }

  private cellCurrentA(k: number): number {
    const powerW = this.loop.packPowersW[k]!;
    const currentA = this.loop.packCurrentsA[k]!;
    const busV = busUnderLoadV(this.pack, this.state, powerW, currentA);
    // A collapsed sample ends the run; its current only has to be finite.
    return (Number.isNaN(busV) ? 0 : powerW / busV + currentA) / this.pack.parallelCount;
  }

  private relaxOhm = 0;

  /** Start value of the relaxation voltage that comes back to itself after one loop. */
  private periodicStartV(): number {
    let endV = 0;
    let product = 1;
    for (let k = 0; k < this.loop.count; k++) {
      const settledV = this.cellCurrentsA[k]! * this.relaxOhm;
      endV = settledV + (endV - settledV) * this.decays[k]!;
      product *= this.decays[k]!;
    }
    return product < 1 ? endV / (1 - product) : endV;
  }

  private averages(startV: number): LoopAverage {
    const { pack, loop, state } = this;
    let relaxationV = startV;
    let chargeC = 0;
    let worst = Number.POSITIVE_INFINITY;
    let worstWarning = Number.POSITIVE_INFINITY;
    let meanV = 0;
    for (let k = 0; k < loop.count; k++) {
      const powerW = loop.packPowersW[k]!;
      const currentA = loop.packCurrentsA[k]!;
      chargeC += this.cellCurrentsA[k]! * loop.durationsS[k]!;
      const settledV = this.cellCurrentsA[k]! * this.relaxOhm;
      const endV = settledV + (relaxationV - settledV) * this.decays[k]!;
      // Under constant load the voltage only moves one way with V_1: the larger V_1 is the worse end.
      state.relaxationV = Math.max(relaxationV, endV);
      worst = Math.min(worst, marginV(pack, state, powerW, currentA));
      const busV = busUnderLoadV(pack, state, powerW, currentA);
      worstWarning = Math.min(
        worstWarning,
        Number.isNaN(busV) ? Number.NEGATIVE_INFINITY : busV - pack.warningBusV,
      );
      meanV += ((relaxationV + endV) / 2) * loop.durationsS[k]!;
      relaxationV = endV;
    }
    if (worst > 0) this.relaxationGuessV = meanV / loop.totalS;
    return { cellA: chargeC / loop.totalS, startV, marginV: worst, warningMarginV: worstWarning };
  }

  /** Whether a load cannot be supplied at all a little below a state of charge. */
  collapsesBelow(soc: number): boolean {
    return this.at(soc - collapseProbe).marginV === Number.NEGATIVE_INFINITY;
  }

  /** State of charge between two just before a margin is used up (just after, a load may have collapsed). */
  crossing(fullerSoc: number, emptierSoc: number, which: 'marginV' | 'warningMarginV'): number {
    let good = fullerSoc;
    let bad = emptierSoc;
    for (let halving = 0; halving < 12; halving++) {
      const middle = (good + bad) / 2;
      if (this.at(middle)[which] > 0) good = middle;
      else bad = middle;
    }
    return good;
  }

  /** Time from one state of charge to a lower one (Simpson's rule on charge over current). */
  timeBetweenS(fromSoc: number, fromCellA: number, toSoc: number): number {
    const span = fromSoc - toSoc;
    if (span <= 0) return 0;
    const middleA = this.at(fromSoc - span / 2).cellA;
    const endA = this.at(toSoc).cellA;
    return ((span * this.pack.cellChargeC) / 6) * (1 / fromCellA + 4 / middleA + 1 / endA);
  }
}
