import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { MeasuredQuantity } from '../../study/choosing.js';
import type { Candidate, Study } from '../../study/study.js';
import { alone, type Threads } from '../threads.js';
import { calibrate } from './calibrate.js';
import { type ModelledDraws, priorDraws } from './prior-draws.js';

/**
 * The draws of one candidate that stand behind the results of its study, made anew: those that agree with what was
 * measured on the drive of today.
 * @param quantities what the model is asked for
 * @returns null where no bands are given, since what was measured and what was believed agree in too few draws
 */
export function candidateDraws(
  study: Study,
  candidate: Candidate,
  quantities: readonly MeasuredQuantity[],
  threads: Threads = alone,
): ModelledDraws | null {
  const { candidates, drawsCount, seed } = study;
  const calibrated = calibrate(study, threads);
  if (calibrated?.outcome.bandsGiven === false) return null;
  // Laid out for all candidates: which inputs take the even sequences depends on the others too.
  const all = new EnsembleRun(study, candidates, drawsCount, seed, calibrated?.columnOf);
  const places = new Map(all.inputs.map(({ path }, index) => [path, index]));
  return priorDraws(study, candidate, quantities, {
    drawCount: drawsCount,
    threads,
    columnOf: ({ path }) => all.columns[places.get(path)!]!,
  });
}
