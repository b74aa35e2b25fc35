import { availableParallelism } from 'node:os';
import type { Helper } from '../app/helpers.js';

/** More threads than this wait for each other more than they help. */
const mostThreads = 4;

/** The threads beside the main one, for a command that computes. */
export interface HelperThreads {
  /** Starts them; best before anything else is loaded, so that both load at the same time. */
  call(): Promise<void>;
  called(): readonly Helper[];
  /** Lets them go. */
  dismiss(): void;
}

/** As many threads as the machine has processors, or as the user says; the results are the same with any number. */
export function helperThreads(asked: string | undefined): HelperThreads {
  let helpers: readonly Helper[] = [];
  return {
    async call() {
      if (helpers.length > 0) return;
      const { startHelpers } = await import('../app/helpers.js');
      helpers = startHelpers(threadCount(asked) - 1);
    },
    called: () => helpers,
    dismiss() {
      for (const helper of helpers) helper.dismiss();
      helpers = [];
    },
  };
}

/** At least 1: the main thread. What is no whole number is as if nobody had said anything. */
export function threadCount(asked: string | undefined): number {
  if (asked !== undefined && /^[1-9]\d{0,2}$/.test(asked)) return Number(asked);
  return Math.min(mostThreads, availableParallelism());
}
