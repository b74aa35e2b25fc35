import { driveEffortMoving, speedRatio, speedRatioSlope } from '../physics/linkage.js';
import { movingEffort, staticEffort } from '../physics/load.js';
import { lawAcceleration, lawPosition, lawVelocity } from '../physics/motion-law.js';
import type { Cue } from '../study/show.js';
import { type CandidateModel, usableVoltageFraction } from './candidate-model.js';
import { type BusDraw, busDraw, drivesCurrentA, movingCurrentA, movingVoltageV } from './motor-point.js';

/** Slowest that a move may be stretched before it counts as impossible. */
const largestStretch = 1000;

/** A position-controlled move at one sample, for one stretch. Reused between calls. */
export interface MovePoint {
  /** Along the motion: positive = the drive pushes. */
  effort: number;
  speed: number;
  currentA: number;
  voltageV: number;
}

/** One move cue sampled at equal times, both ends included: what does not depend on how far it is stretched. */
export class MoveTrack {
  readonly positions: Float64Array;
  private readonly staticEfforts: Float64Array;
  private readonly ratios: Float64Array;
  private readonly slopes: Float64Array;
  private readonly velocities: Float64Array;
  private readonly accelerations: Float64Array;
  /** +1 for a move towards higher positions. */
  private readonly direction: number;
  private readonly draw: BusDraw = { powerW: 0, currentA: 0 };
  private readonly point: MovePoint = { effort: 0, speed: 0, currentA: 0, voltageV: 0 };
  /** Sample that failed last: the first to ask next time. */
  private hardest = 0;

  constructor(
    private readonly model: CandidateModel,
    cue: Cue,
    /** Samples, ends included. */
    readonly count: number,
  ) {
    const travel = cue.toPosition - cue.fromPosition;
    this.direction = Math.sign(travel) || 1;
    const numbers = () => new Float64Array(this.count);
    this.positions = numbers();
    this.staticEfforts = numbers();
    this.ratios = numbers();
    this.slopes = numbers();
    this.velocities = numbers();
    this.accelerations = numbers();
    for (let i = 0; i < this.count; i++) {
      const fraction = i / (this.count - 1);
      const position = cue.fromPosition + travel * lawPosition(cue.law, fraction);
      this.positions[i] = position;
      this.staticEfforts[i] = staticEffort(model.load, position);
      this.ratios[i] = speedRatio(model.coupling, position);
      this.slopes[i] = speedRatioSlope(model.coupling, position);
      this.velocities[i] = (travel * lawVelocity(cue.law, fraction)) / cue.durationS;
      this.accelerations[i] = (travel * lawAcceleration(cue.law, fraction)) / (cue.durationS * cue.durationS);
    }
  }

  /** Effort, speed, current and voltage of one drive at sample `i` when the cue takes `stretch` times as long. */
  evaluate(i: number, stretch: number): MovePoint {
    const { model, point, direction } = this;
    const velocity = this.velocities[i]! / stretch;
    const acceleration = this.accelerations[i]! / (stretch * stretch);
    const ratio = this.ratios[i]!;
    // The ends of a move have no speed yet; there the direction of the cue decides who pushes and how friction acts.
    const loadEffort = movingEffort(model.load, this.staticEfforts[i]!, velocity, acceleration, direction);
    const driveEffort = driveEffortMoving(loadEffort, direction, ratio, model.coupling);
    const along = Math.sign(ratio) * direction;
    point.effort = driveEffort * along;
    point.speed = Math.abs(ratio * velocity);
    const driveAcceleration = ratio * acceleration + this.slopes[i]! * velocity * velocity;
    point.currentA = movingCurrentA(model, point.effort, driveAcceleration * along);
    point.voltageV = movingVoltageV(model, point.currentA, point.speed);
    return point;
  }

  /** Whether every sample stays within the weakest bus and the regulator's current. */
  private possibleAt(stretch: number): boolean {
    if (!this.sampleIsPossible(this.hardest, stretch)) return false;
    for (let i = 0; i < this.count; i++) {
      if (this.sampleIsPossible(i, stretch)) continue;
      this.hardest = i;
      return false;
    }
    return true;
  }

  private sampleIsPossible(i: number, stretch: number): boolean {
    const { bus, drive } = this.model;
    const point = this.evaluate(i, stretch);
    if (!(Math.abs(point.voltageV) <= usableVoltageFraction * bus.weakV)) return false;
    if (bus.regulatorLimitA === Number.POSITIVE_INFINITY) return true;
    busDraw(this.model, point.currentA, point.voltageV, this.draw);
    return drivesCurrentA(this.model, this.draw, drive.idleCurrentA, bus.nominalV) <= bus.regulatorLimitA;
  }

  /**
   * Smallest factor ≥ 1 by which the cue has to take longer. (M16)
   *
   * Always the sample that fails is slowed until it just works, then all are asked again. A slower lowering can need
   * more braking voltage, so each sample is searched upwards in small steps.
   * @param growth ratio between the steps of the search
   * @param halvings of the last step
   * @returns null when no factor up to 1000 helps
   */
  stretch(growth: number, halvings: number): number | null {
    let stretch = 1;
    while (!this.possibleAt(stretch)) {
      const slower = this.slowedForHardest(stretch, growth, halvings);
      if (slower === null) return null;
      stretch = slower;
    }
    return stretch;
  }

  /** Smallest larger stretch at which the sample that failed last works. */
  private slowedForHardest(from: number, growth: number, halvings: number): number | null {
    const i = this.hardest;
    let impossible = from;
    let possible = from * growth;
    while (!this.sampleIsPossible(i, possible)) {
      if (possible > largestStretch) return null;
      impossible = possible;
      possible *= growth;
    }
    for (let halving = 0; halving < halvings; halving++) {
      const middle = (impossible + possible) / 2;
      if (this.sampleIsPossible(i, middle)) possible = middle;
      else impossible = middle;
    }
    return possible;
  }

  /** Position at which even the slowest move asks for most. */
  worstPosition(): number {
    let worst = 0;
    let worstV = -1;
    for (let i = 0; i < this.count; i++) {
      const voltageV = Math.abs(this.evaluate(i, largestStretch).voltageV);
      if (!(voltageV <= worstV)) {
        worstV = voltageV;
        worst = i;
      }
    }
    return this.positions[worst]!;
  }
}
