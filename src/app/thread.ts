import { parentPort, workerData } from 'node:worker_threads';
import { tasks } from '../assess/tasks.js';
import { EnsembleRun } from '../simulate/ensemble/run-ensemble.js';
import { takePortions } from './shared-draws.js';
import {
  at,
  type SharedTask,
  type TaskResult,
  type ThreadStart,
  type ThreadWork,
  taskState,
} from './thread-work.js';

// A thread beside the main one: it waits for work and does it, one piece after the other.

const { index, results } = workerData as ThreadStart;

parentPort!.on('message', (work: ThreadWork) => {
  if ('draws' in work) takePortions(work.draws, () => EnsembleRun.from(work.draws.run));
  else takeTask(work.task);
});

function takeTask({ taskIndex, name, input, taskCounts }: SharedTask): void {
  if (Atomics.compareExchange(taskCounts, at.step, taskState.waiting, taskState.begun) !== taskState.waiting)
    return;
  Atomics.store(taskCounts, at.taker, index);
  answer(taskIndex, () => (tasks[name] as (given: unknown) => unknown)(input));
  Atomics.store(taskCounts, at.step, taskState.done);
  Atomics.notify(taskCounts, at.step);
}

function answer(taskIndex: number, resultOf: () => unknown): void {
  try {
    results.postMessage({ taskIndex, result: resultOf() } satisfies TaskResult);
  } catch (error) {
    results.postMessage({ taskIndex, error } satisfies TaskResult);
  }
}
