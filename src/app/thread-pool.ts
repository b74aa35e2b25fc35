import { receiveMessageOnPort } from 'node:worker_threads';
import { alone, carriedOut, type Threads } from '../assess/threads.js';
import type { Helper } from './helpers.js';
import { finishPortions, shareDraws, takePortions } from './shared-draws.js';
import { at, type SharedTask, type TaskResult, type ThreadWork, taskState } from './thread-work.js';

/** A thread that takes so long over a piece of work has died; the main thread does it again. */
const patienceMs = 60_000;

/**
 * This thread and its helpers. Work that no helper has taken by the time it is waited for is done here, so nobody
 * ever waits for one that has not begun.
 */
export function threadsOf(helpers: readonly Helper[]): Threads {
  if (helpers.length === 0) return alone;
  const send = (work: ThreadWork) => {
    for (const helper of helpers) helper.send(work);
  };
  let sent = 0;
  return {
    beginDraws(run) {
      const draws = shareDraws(run);
      send({ draws });
      return () => {
        takePortions(draws, () => run);
        finishPortions(draws, run, patienceMs);
        return draws.outcomes;
      };
    },
    begin(name, input) {
      sent += 1;
      const task: SharedTask = { taskIndex: sent, name, input, taskCounts: newCounts() };
      send({ task });
      return () => {
        const answer = answerOf(task, helpers);
        if (answer === null) return carriedOut(name, input);
        if ('error' in answer) throw answer.error;
        return answer.result as ReturnType<typeof carriedOut<typeof name>>;
      };
    },
  };
}

const newCounts = () => new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT));

/** What the helper that took a task found; null when the task is to be carried out here. */
function answerOf({ taskIndex, taskCounts }: SharedTask, helpers: readonly Helper[]): TaskResult | null {
  const before = Atomics.compareExchange(taskCounts, at.step, taskState.waiting, taskState.begun);
  if (before === taskState.waiting) return null;
  if (Atomics.wait(taskCounts, at.step, taskState.begun, patienceMs) === 'timed-out') return null;
  const { results } = helpers[Atomics.load(taskCounts, at.taker)]!;
  for (;;) {
    const answer = receiveMessageOnPort(results)?.message as TaskResult | undefined;
    if (answer === undefined) return null;
    // An answer to a task that was given up before is let go.
    if (answer.taskIndex === taskIndex) return answer;
  }
}
