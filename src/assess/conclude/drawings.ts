import type { Ensemble } from '../../simulate/ensemble/ensemble.js';
import type { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import { runDownBand } from '../certainty/run-down-bands.js';
import type { RunDownBand } from '../certainty.js';

/**
 * Run-down bands of some candidates.
 * @param run what the draws were made with
 */
export function runDownBands(
  ids: readonly string[],
  ensemble: Ensemble,
  run: EnsembleRun,
  simulate: (study: Study, candidate: Candidate) => CandidateRun,
): RunDownBand[] {
  return [...new Set(ids)].flatMap((id) => {
    const runOf = (draw: number) => {
      const drawn = run.studyAt(draw);
      return simulate(drawn, drawn.candidates.find((candidate) => candidate.id === id)!);
    };
    return runDownBand(id, ensemble, runOf) ?? [];
  });
}
