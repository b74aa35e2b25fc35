import type { Ensemble, EnsembleScheme } from '../../simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import { generatorName } from '../../simulate/sampling/draw-plan.js';
import type { Study } from '../../study/study.js';
import { calibrate } from '../calibration/calibrate.js';
import type { CalibrationOutcome } from '../certainty.js';

/** All draws of a study, made to agree with what was measured. */
export interface Draws {
  ensemble: Ensemble;
  /** What the draws were made with, to look at single ones again. */
  run: EnsembleRun;
  /** null when nothing was measured. */
  calibration: CalibrationOutcome | null;
}

/**
 * Draws and computes a whole study. Where the drive of today was measured, the draws of what it shares with the
 * others, and of its own figures, are those that agree with the measurements.
 */
export function drawStudy(study: Study): Draws {
  const calibrated = calibrate(study);
  const run = new EnsembleRun(study, study.candidates, study.drawsCount, study.seed, calibrated?.columnOf);
  const outcomes = run.emptyOutcomes();
  run.run(0, run.drawCount, outcomes);
  const scheme: EnsembleScheme = { ...run.scheme, generator: generatorName };
  const ensemble: Ensemble = {
    drawCount: run.drawCount,
    candidateIds: run.candidateIds,
    outcomes,
    inputs: run.sampledInputs(),
    scheme,
  };
  return { ensemble, run, calibration: calibrated?.outcome ?? null };
}
