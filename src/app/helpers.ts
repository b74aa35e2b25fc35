import { MessageChannel, type MessagePort, Worker } from 'node:worker_threads';
import type { ThreadStart, ThreadWork } from './thread-work.js';

/** A thread beside the main one. */
export interface Helper {
  send(work: ThreadWork): void;
  /** Its results, received without giving up the thread that waits. */
  results: MessagePort;
  /** Lets it go, whatever it is doing. */
  dismiss(): void;
}

/**
 * Starts threads that load what they need while this one goes on. Light to load itself, so that a command can call
 * them before anything else.
 */
export function startHelpers(count: number): Helper[] {
  return Array.from({ length: count }, (_, index) => startHelper(index));
}

function startHelper(index: number): Helper {
  const { port1, port2 } = new MessageChannel();
  const workerData: ThreadStart = { index, results: port2 };
  const worker = new Worker(new URL('./thread.js', import.meta.url), { workerData, transferList: [port2] });
  // A thread that cannot start, or dies, takes nothing more: the main thread then does the work.
  worker.on('error', () => {});
  worker.unref();
  port1.unref();
  return {
    results: port1,
    send: (work) => worker.postMessage(work),
    dismiss: () => void worker.terminate(),
  };
}
