import type { FileOperations } from '../../src/archive/file-operations.js';

/** A step of a file system that changes something, or promises that it is changed. */
export const steps = [
  'makeFolder',
  'makeFolders',
  'create',
  'write',
  'sync',
  'close',
  'syncFolder',
  'rename',
  'remove',
] as const;
export type Step = (typeof steps)[number];

/** Which step fails, and how. */
export interface Fault {
  /** The first is 1. */
  at: number;
  /** `refused`: nothing is done; `done`: it is done and yet reported; `half`: a write stops in the middle. */
  how: 'refused' | 'done' | 'half';
  /** Whether everything after it fails as well, as when the power is gone. */
  last: boolean;
}

/** A file system that counts its steps and fails at one of them. */
export function faulty(
  inner: FileOperations,
  fault: Fault | null,
): { files: FileOperations; done: { step: Step; path: string }[] } {
  const done: { step: Step; path: string }[] = [];
  const paths = new Map<number, string>();
  const wrapped = (step: Step) => {
    const method = inner[step] as (...args: unknown[]) => unknown;
    return (...args: unknown[]): unknown => {
      const path = typeof args[0] === 'number' ? (paths.get(args[0]) ?? '') : String(args[0]);
      done.push({ step, path });
      const isOver = fault?.last === true && done.length > fault.at;
      if (fault === null || (done.length !== fault.at && !isOver)) {
        const result = method(...args);
        if (step === 'create') paths.set(result as number, path);
        return result;
      }
      // Handles are given back to the system even when it fails: the test must not run out of them.
      if (!isOver && fault.how === 'done') method(...args);
      else if (!isOver && fault.how === 'half' && step === 'write')
        inner.write(
          args[0] as number,
          (args[1] as Uint8Array).subarray(0, (args[1] as Uint8Array).length / 2),
        );
      if (step === 'close' && (isOver || fault.how !== 'done')) method(...args);
      throw new Error(`no ${step} of ${path}`);
    };
  };
  const faults = Object.fromEntries(steps.map((step) => [step, wrapped(step)]));
  return { files: { ...inner, ...faults }, done };
}
