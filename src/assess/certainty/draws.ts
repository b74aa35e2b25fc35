import type { Ensemble, EnsembleScheme } from '../../simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import { generatorName } from '../../simulate/sampling/draw-plan.js';
import type { Study } from '../../study/study.js';
import { calibrate } from '../calibration/calibrate.js';
import type { CalibrationOutcome } from '../certainty.js';
import { alone, type Threads } from '../threads.js';

/** All draws of a study, made to agree with what was measured. */
export interface Draws {
  ensemble: Ensemble;
  /** What the draws were made with, to look at single ones again. */
  run: EnsembleRun;
  /** null when nothing was measured. */
  calibration: CalibrationOutcome | null;
}

/**
 * Begins to draw and to compute a whole study; the draws are there when what comes back is called. Where the drive
 * of today was measured, the draws of what it shares with the others, and of its own figures, are those that agree
 * with the measurements.
 */
export function beginDraws(study: Study, threads: Threads = alone): () => Draws {
  const calibrated = calibrate(study, threads);
  const run = new EnsembleRun(study, study.candidates, study.drawsCount, study.seed, calibrated?.columnOf);
  const finish = threads.beginDraws(run);
  const scheme: EnsembleScheme = { ...run.scheme, generator: generatorName };
  return () => {
    const { drawCount, candidateIds } = run;
    const ensemble = { drawCount, candidateIds, outcomes: finish(), inputs: run.sampledInputs(), scheme };
    return { ensemble, run, calibration: calibrated?.outcome ?? null };
  };
}
