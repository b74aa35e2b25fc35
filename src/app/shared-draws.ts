import type { EnsembleRun, RunDescription } from '../simulate/ensemble/run-ensemble.js';

/** Draws taken at a time: few enough that nobody waits long for the last ones. */
const portionDraws = 32;

/** Places in the shared state. */
const at = { next: 0, done: 1 } as const;

/** Draws that several threads compute together, each taking the next portion until none is left. */
export interface SharedDraws {
  run: RunDescription;
  /** `[candidate][outcome]`, columns in shared memory. */
  outcomes: Float64Array[][];
  /** Next portion to take, portions done. */
  portionCounts: Int32Array;
  /** 1 for every portion that is done. */
  doneCounts: Int32Array;
}

/** A column in memory that all threads see. */
const sharedColumn = (length: number) =>
  new Float64Array(new SharedArrayBuffer(length * Float64Array.BYTES_PER_ELEMENT));

const sharedCounters = (length: number) =>
  new Int32Array(new SharedArrayBuffer(length * Int32Array.BYTES_PER_ELEMENT));

/** Lays out a run for several threads. */
export function shareDraws(run: EnsembleRun): SharedDraws {
  const described = run.describe();
  const columns = described.columns.map((column) => {
    const shared = sharedColumn(column.length);
    shared.set(column);
    return shared;
  });
  return {
    run: { ...described, columns },
    outcomes: run.emptyOutcomes(sharedColumn),
    portionCounts: sharedCounters(2),
    doneCounts: sharedCounters(Math.ceil(run.drawCount / portionDraws)),
  };
}

/**
 * Computes portions until none is left to take.
 * @param made gives the run; asked for only when there is something to do
 */
export function takePortions(shared: SharedDraws, made: () => EnsembleRun): void {
  const { portionCounts, doneCounts } = shared;
  let run: EnsembleRun | null = null;
  for (;;) {
    const portion = Atomics.add(portionCounts, at.next, 1);
    if (portion >= doneCounts.length) return;
    run ??= made();
    computePortion(shared, run, portion);
  }
}

function computePortion(
  { portionCounts, doneCounts, outcomes }: SharedDraws,
  run: EnsembleRun,
  portion: number,
): void {
  const from = portion * portionDraws;
  run.run(from, Math.min(from + portionDraws, run.drawCount), outcomes);
  Atomics.store(doneCounts, portion, 1);
  Atomics.add(portionCounts, at.done, 1);
  Atomics.notify(portionCounts, at.done);
}

/**
 * Waits for the portions that others took. Whoever gives no sign for so long is given up, and its portions are
 * computed here: a portion computed twice holds the same numbers.
 */
export function finishPortions(shared: SharedDraws, run: EnsembleRun, patienceMs: number): void {
  const { portionCounts, doneCounts } = shared;
  for (;;) {
    const done = Atomics.load(portionCounts, at.done);
    if (done >= doneCounts.length) return;
    if (Atomics.wait(portionCounts, at.done, done, patienceMs) === 'timed-out') break;
  }
  for (let portion = 0; portion < doneCounts.length; portion++) {
    if (Atomics.load(doneCounts, portion) === 0) computePortion(shared, run, portion);
  }
}
