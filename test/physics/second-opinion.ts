import { createRequire } from 'node:module';

/** Slopes of a system at a time. */
type Slopes = (timeS: number, state: number[]) => number[];

interface ExtrapolationSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(slopes: Slopes, fromS: number, state: number[], toS: number): { y: number[]; outcome: number };
}

const { Solver } = createRequire(import.meta.url)('odex') as {
  Solver: new (size: number) => ExtrapolationSolver;
};

/**
 * State after a time, by an extrapolation method that shares nothing with the project
 * (Gragg–Bulirsch–Stoer, package `odex`), at a relative tolerance of 1e-11.
 */
export function solveElsewhere(slopes: Slopes, state: number[], toS: number, fromS = 0): number[] {
  const solver = new Solver(state.length);
  solver.absoluteTolerance = 1e-12;
  solver.relativeTolerance = 1e-11;
  solver.maxSteps = 200_000;
  const { y, outcome } = solver.solve(slopes, fromS, state, toS);
  if (outcome !== 0) throw new Error('the second solver gave up');
  return y;
}
