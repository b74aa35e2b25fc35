import type { Ensemble, EnsembleScheme } from '../../simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import { generatorName } from '../../simulate/sampling/draw-plan.js';
import type { Study } from '../../study/study.js';
import { believedStudy } from '../calibration/believed-study.js';
import { calibrate } from '../calibration/calibrate.js';
import type { CalibrationOutcome } from '../certainty.js';
import { alone, type Pending, type Threads } from '../threads.js';

/** All draws of a study, made to agree with what was measured. */
export interface Draws {
  ensemble: Ensemble;
  /** What the draws were made with, to look at single ones again. */
  run: EnsembleRun;
  /** null when nothing was measured. */
  calibration: CalibrationOutcome | null;
}

/** Draws that have begun. */
export interface BegunDraws {
  /**
   * The study that single figures are computed from: as read, or as the readings leave it. A copy in the latter case,
   * so its candidates are others.
   */
  believed: Study;
  finish: Pending<Draws>;
}

/**
 * Begins to draw and to compute a whole study. Where the drive of today was measured, the draws of what it shares with
 * the others, and of its own figures, are those that agree with the measurements.
 */
export function beginDraws(study: Study, threads: Threads = alone): BegunDraws {
  const calibrated = calibrate(study, threads);
  const run = new EnsembleRun(study, study.candidates, study.drawsCount, study.seed, calibrated?.columnOf);
  const finishDraws = threads.beginDraws(run);
  const scheme: EnsembleScheme = { ...run.scheme, generator: generatorName };
  const finish = (): Draws => {
    const { drawCount, candidateIds } = run;
    const outcomes = finishDraws();
    const ensemble = { drawCount, candidateIds, outcomes, inputs: run.sampledInputs(), scheme };
    return { ensemble, run, calibration: calibrated?.outcome ?? null };
  };
  return { believed: calibrated?.outcome.bandsGiven ? believedStudy(study, run) : study, finish };
}
