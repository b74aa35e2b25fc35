import { gravityEffortAt, staticEffort } from '../../physics/load.js';
import { prepareCandidate } from '../../simulate/candidate.js';
import type { CandidateModel } from '../../simulate/candidate-model.js';
import type { AssistSpring } from '../../study/feature.js';
import type { Cue } from '../../study/show.js';
import { driveShareAt, evenPositions, withSpringOn } from './feature-efforts.js';
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
  /** What walking, gust and friction add at each position, whatever the spring. */
  private readonly shakenEfforts: number[];
  private readonly driveShares: number[];
  private readonly peaks: Peaks;
  private readonly lowestAllowed: number;
  private readonly loop: readonly Cue[];
  private readonly loopS: number;

  constructor({ study, candidate }: Setup) {
    this.model = prepareCandidate(study, candidate).model;
    const { range, load } = this.model;
    this.positions = evenPositions(range.lowest, range.highest, pointCount);
    this.shakenEfforts = this.positions.map(
      (position) =>
        Math.abs(gravityEffortAt(this.model.load, position)) * load.bounceFraction +
        load.gustEffort +
        load.frictionEffort,
    );
    this.driveShares = this.positions.map((position) => driveShareAt(this.model, position));
    this.lowerStop = study.feature.lowerStopPosition;
    this.loop = study.show.loop;
    this.loopS = this.loop.reduce((sum, cue) => sum + cue.durationS, 0);
    this.peaks = this.peaksOf(this.effortsOf(this.model));
    this.lowestAllowed = Math.min(staticEffort(load, this.lowerStop), load.frictionEffort);
  }

  /** Largest effort of gravity over the cue range; negative where it pushes the feature up everywhere. */
  get largestGravity(): number {
    return Math.max(...this.positions.map((position) => gravityEffortAt(this.model.load, position)));
  }

  /**
   * Whether a spring may be proposed: no peak of either sign is raised over the cue range, neither at the feature
   * nor at the drive; the feature still comes down onto its lower stop by itself, against the friction of its joint;
   * and a cord stays taut.
   */
  allows(spring: AssistSpring): boolean {
    const model = withSpringOn(this.model, spring);
    const most = (peak: number) => (1 + slack) * peak;
    if (staticEffort(model.load, this.lowerStop) < this.lowestAllowed - slack * this.peaks.still)
      return false;
    const efforts = this.effortsOf(model);
    const { still, worst, drive } = this.peaksOf(efforts);
    if (!(still <= most(this.peaks.still) && worst <= most(this.peaks.worst))) return false;
    if (!(drive <= most(this.peaks.drive))) return false;
    return (
      this.model.coupling.kind !== 'spool' || efforts.every((effort) => effort >= -slack * this.peaks.still)
    );
  }

  /** Whether a spring leaves the drive nothing to bear anywhere in the cue range, not even bounce or friction. */
  leavesNothing(spring: AssistSpring): boolean {
    const { drive } = this.peaksOf(this.effortsOf(withSpringOn(this.model, spring)));
    return drive <= slack * this.peaks.drive;
  }

  /**
   * Mean draw of all drives over the loop with a spring, in W, its moves played as written and its holds with a rate
   * a little too small and too large: a balance that only an exact rate reaches is worth nothing to a maker.
   */
  drawW(spring: AssistSpring): number {
    const model = withSpringOn(this.model, spring);
    const missed = [1 - rateErrorFraction, 1 + rateErrorFraction].map((factor) =>
      withSpringOn(this.model, scaled(spring, factor)),
    );
    let energyJ = 0;
    for (const cue of this.loop) {
      if (cue.action === 'move') energyJ += cue.durationS * moveDrawW(model, cue);
      if (cue.action !== 'hold') continue;
      for (const other of missed)
        energyJ += (cue.durationS * holdDrawW(other, cue.fromPosition)) / missed.length;
    }
    return energyJ / this.loopS;
  }

  /** Efforts that hold the feature still. */
  private effortsOf({ load }: CandidateModel): number[] {
    return this.positions.map((position) => staticEffort(load, position));
  }

  /** Walking, gust and friction act either way, so the worst is what they add to the magnitude. (M1) */
  private peaksOf(efforts: readonly number[]): Peaks {
    const peaks: Peaks = { still: 0, worst: 0, drive: 0 };
    efforts.forEach((effort, i) => {
      const worst = Math.abs(effort) + this.shakenEfforts[i]!;
      peaks.still = Math.max(peaks.still, Math.abs(effort));
      peaks.worst = Math.max(peaks.worst, worst);
      peaks.drive = Math.max(peaks.drive, worst * this.driveShares[i]!);
    });
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
