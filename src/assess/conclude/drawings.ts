import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { Draws } from '../certainty/draws.js';
import { runDownBand } from '../certainty/run-down-bands.js';
import type { RunDownBand } from '../certainty.js';

/** Run-down bands of some candidates. */
export function runDownBands(
  ids: readonly string[],
  { ensemble, run }: Draws,
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
