import type { MessagePort } from 'node:worker_threads';
import type { Tasks } from '../assess/tasks.js';
import type { SharedDraws } from './shared-draws.js';

/** What the counts of a task hold: where it stands, and the place of the thread that took it. */
export const at = { step: 0, taker: 1 } as const;

/** Where a task stands. Whoever moves it on from waiting carries it out. */
export const taskState = { waiting: 0, begun: 1, done: 2 } as const;

/** A task for whoever takes it first. */
export interface SharedTask {
  /** Tells the answers apart. */
  taskIndex: number;
  name: keyof Tasks;
  input: unknown;
  /** In shared memory. */
  taskCounts: Int32Array;
}

/** What a thread is sent. */
export type ThreadWork = { draws: SharedDraws } | { task: SharedTask };

/** What a thread is started with. */
export interface ThreadStart {
  index: number;
  /** Results go through here, so that they can be received without giving up the thread. */
  results: MessagePort;
}

/** What a thread sends back for a task. */
export type TaskResult = { taskIndex: number } & ({ result: unknown } | { error: unknown });
