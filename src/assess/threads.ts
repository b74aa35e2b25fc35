import type { EnsembleRun } from '../simulate/ensemble/run-ensemble.js';
import { type Tasks, tasks } from './tasks.js';

/** What has begun: waits for the result and gives it. */
export type Pending<T> = () => T;

/**
 * Threads that compute something while the one that asks goes on. What comes out does not depend on who computed it:
 * draws depend on their own inputs only, and a task on what it was given.
 */
export interface Threads {
  /** Begins to compute all draws of a run; the result is `[candidate][outcome]`, a column of draws each. */
  beginDraws(run: EnsembleRun): Pending<Float64Array[][]>;
  /** Begins a task. What it is given and what it gives is plain data. */
  begin<Name extends keyof Tasks>(
    name: Name,
    input: Parameters<Tasks[Name]>[0],
  ): Pending<ReturnType<Tasks[Name]>>;
}

/** The thread that asks, alone: everything is computed when it is waited for. */
export const alone: Threads = {
  beginDraws: (run) => () => {
    const outcomes = run.emptyOutcomes();
    run.run(0, run.drawCount, outcomes);
    return outcomes;
  },
  begin: (name, input) => () => carriedOut(name, input),
};

/** Carries out a task in this thread. */
export function carriedOut<Name extends keyof Tasks>(
  name: Name,
  input: Parameters<Tasks[Name]>[0],
): ReturnType<Tasks[Name]> {
  const task = tasks[name] as (given: typeof input) => ReturnType<Tasks[Name]>;
  return task(input);
}
