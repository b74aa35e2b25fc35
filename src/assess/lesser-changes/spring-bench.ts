import { driveEffortPushing, speedRatio } from '../../physics/linkage.js';
import { type LoadParameters, peakEffort, staticEffort } from '../../physics/load.js';
import { prepareCandidate } from '../../simulate/candidate.js';
import type { CandidateModel } from '../../simulate/candidate-model.js';
import type { AssistSpring } from '../../study/feature.js';
import type { Cue } from '../../study/show.js';
import type { Setup } from './proposal.js';
import { holdDrawW, moveDrawW } from './spring-draw.js';

/** Points over the cue range, ends included, at which efforts are compared. */
const pointCount = 41;

/** A spring is bought and bent: this share of its rate is what a maker misses it by. */
export const rateErrorFraction = 0.05;

/** Rounding of a comparison of efforts. */
const slack = 1e-9;

/** Largest efforts over the cue range, magnitudes: still, under walking and gust, and of one drive under those. */
interface Peaks {
  still: number;
  worst: number;
  drive: number;
}

/** Where springs are tried on static efforts, before any of them is simulated. */
export class SpringBench {
  readonly model: CandidateModel;
  readonly lowerStop: number;
  private readonly positions: number[];
  private readonly peaks: Peaks;
  private readonly lowestAllowed: number;
  private readonly loop: readonly Cue[];
  private readonly loopS: number;

  constructor({ study, candidate }: Setup) {
    this.model = prepareCandidate(study, candidate).model;
    const { lowest, highest } = this.model.range;
    this.positions = Array.from(
      { length: pointCount },
      (_, i) => lowest + ((highest - lowest) * i) / (pointCount - 1),
    );
    this.lowerStop = study.feature.lowerStopPosition;
    this.loop = study.show.loop;
    this.loopS = this.loop.reduce((sum, cue) => sum + cue.durationS, 0);
    this.peaks = this.peaksOf(this.model.load);
    const today = staticEffort(this.model.load, this.lowerStop);
    this.lowestAllowed = Math.min(today, this.model.load.frictionEffort);
  }

  /** The load with another spring in place of the one that may be there. */
  loadWith(spring: AssistSpring): LoadParameters {
    return { ...this.model.load, spring };
  }

  /**
   * Whether a spring may be proposed: no peak of either sign is raised over the cue range, neither at the feature
   * nor at the drive; the feature still comes down onto its lower stop by itself, against the friction of its joint;
   * and a cord stays taut.
   */
  allows(spring: AssistSpring): boolean {
    const load = this.loadWith(spring);
    const most = (1 + slack) * this.peaks.worst;
    if (staticEffort(load, this.lowerStop) < this.lowestAllowed - slack * this.peaks.still) return false;
    const peaks = this.peaksOf(load);
    if (!(peaks.still <= (1 + slack) * this.peaks.still && peaks.worst <= most)) return false;
    if (!(peaks.drive <= (1 + slack) * this.peaks.drive)) return false;
    if (this.model.coupling.kind !== 'spool') return true;
    return this.positions.every((position) => staticEffort(load, position) >= -slack * this.peaks.still);
  }

  /**
   * Mean draw of all drives over the loop with a spring, in W, its moves played as written and its holds with a rate
   * a little too small and too large: a balance that only an exact rate reaches is worth nothing to a maker.
   */
  drawW(spring: AssistSpring): number {
    const model = { ...this.model, load: this.loadWith(spring) };
    const missed = [1 - rateErrorFraction, 1 + rateErrorFraction].map((factor) => ({
      ...this.model,
      load: this.loadWith(scaled(spring, factor)),
    }));
    let energyJ = 0;
    for (const cue of this.loop) {
      if (cue.action === 'move') energyJ += cue.durationS * moveDrawW(model, cue);
      if (cue.action !== 'hold') continue;
      for (const other of missed)
        energyJ += (cue.durationS * holdDrawW(other, cue.fromPosition)) / missed.length;
    }
    return energyJ / this.loopS;
  }

  private peaksOf(load: LoadParameters): Peaks {
    const { coupling } = this.model;
    const peaks: Peaks = { still: 0, worst: 0, drive: 0 };
    for (const position of this.positions) {
      const worst = peakEffort(load, position);
      const ratio = speedRatio(coupling, position);
      peaks.still = Math.max(peaks.still, Math.abs(staticEffort(load, position)));
      peaks.worst = Math.max(peaks.worst, Math.abs(worst));
      peaks.drive = Math.max(peaks.drive, Math.abs(driveEffortPushing(worst, ratio, coupling)));
    }
    return peaks;
  }
}

/** The same spring, stronger or weaker. */
export function scaled(spring: AssistSpring, factor: number): AssistSpring {
  return {
    ...spring,
    stiffness: factor * spring.stiffness,
    rateNPerM: factor * spring.rateNPerM,
    constantEffort: factor * spring.constantEffort,
  };
}
