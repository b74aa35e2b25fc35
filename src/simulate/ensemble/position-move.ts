import { usableVoltageFraction } from '../candidate-model.js';
import { blendAt } from './blend-table.js';
import { intervalCount, type MoveGeometry, pointCount } from './cue-geometry.js';
import type { CueLoads } from './cue-loads.js';
import type { MovePoints } from './move-points.js';
import type { PackSide } from './pack-side.js';

/** The stretch is searched like the nominal one, with wider steps and fewer halvings. */
const stretchGrowth = 1.15;
const stretchHalvings = 10;
const largestStretch = 1000;

/** A move of a position-controlled drive, draw after draw. (M16) */
export class PositionMove {
  private readonly drawsW = new Float64Array(pointCount);
  private readonly drawsA = new Float64Array(pointCount);

  constructor(
    private readonly points: MovePoints,
    private readonly pack: PackSide,
    private readonly loads: CueLoads,
  ) {}

  /** Play it as cue `c`; returns how far it is stretched, 0 when it cannot be made. */
  play(move: MoveGeometry, c: number): number {
    const { points, pack, loads, drawsW, drawsA } = this;
    points.layOut(move);
    const stretch = this.stretchOf(move);
    if (stretch === 0) return 0;
    loads.durationsS[c] = move.durationS * stretch;
    const idleA = points.model.drive.idleCurrentA;
    this.drawPoints(0, pointCount);
    let powersW = 0;
    let currentsA = 0;
    let peakA = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < pointCount; i++) {
      const packA = pack.take(drawsW[i]!, drawsA[i]!, idleA);
      if (packA > peakA) {
        peakA = packA;
        loads.peakPowersW[c] = pack.powerW;
        loads.peakCurrentsA[c] = pack.currentA;
      }
      if (i % 2 === 0) continue;
      powersW += pack.powerW;
      currentsA += pack.currentA;
      points.addHeat(loads, c, i, 1 / intervalCount);
    }
    loads.powersW[c] = powersW / intervalCount;
    loads.currentsA[c] = currentsA / intervalCount;
    return stretch;
  }

  /**
   * Current and voltage of one drive at points `from` to before `to`. (M1, M3, M11)
   * @returns the point with the largest voltage
   */
  private evaluate(move: MoveGeometry, stretch: number, from: number, to: number): number {
    const { points } = this;
    const { load, drive, coupling } = points.model;
    const { direction, velocities, accelerations, ratios, slopes } = move;
    const { statics, efforts, speeds, currentsA, voltagesV } = points;
    const { noLoadCurrentA, speedConstant, resistanceOhm, rotorInertia } = drive;
    const perForward = 1 / (drive.forwardEfficiency * speedConstant);
    const perBackward = drive.backwardEfficiency / speedConstant;
    const pushing = 1 / (coupling.driveCount * coupling.efficiency);
    const yielding = coupling.efficiency / coupling.driveCount;
    const friction = load.frictionEffort * direction;
    const inertiaPerConstant = rotorInertia / speedConstant;
    const slower = 1 / stretch;
    let hardest = from;
    let hardestV = -1;
    for (let i = from; i < to; i++) {
      const velocity = velocities[i]! * slower;
      const acceleration = accelerations[i]! * slower * slower;
      const ratio = ratios[i]!;
      const along = ratio < 0 ? -direction : direction;
      const effort =
        statics[i]! +
        load.inertia * acceleration +
        load.dragCoefficient * velocity * Math.abs(velocity) +
        friction;
      const pushed = ((effort * direction >= 0 ? pushing : yielding) * effort * along) / ratio;
      const driveAcceleration = (ratio * acceleration + slopes[i]! * velocity * velocity) * along;
      const currentA =
        noLoadCurrentA +
        pushed * (pushed >= 0 ? perForward : perBackward) +
        inertiaPerConstant * driveAcceleration;
      const speed = Math.abs(ratio * velocity);
      const voltageV = currentA * resistanceOhm + speedConstant * speed;
      efforts[i] = pushed;
      speeds[i] = speed;
      currentsA[i] = currentA;
      voltagesV[i] = voltageV;
      if (!(Math.abs(voltageV) <= hardestV)) {
        hardestV = Math.abs(voltageV);
        hardest = i;
      }
    }
    return hardest;
  }

  /** Draw of one drive on its bus at evaluated points `from` to before `to`. (M11, M15) */
  private drawPoints(from: number, to: number): void {
    const { drawsW, drawsA } = this;
    const { model, state, currentsA, voltagesV } = this.points;
    const { coldRow } = state;
    const dutyPerA = state.ohm / state.busV;
    for (let i = from; i < to; i++) {
      const currentA = currentsA[i]!;
      const voltageV = voltagesV[i]!;
      if (currentA < 0 && voltageV >= 0) {
        drawsW[i] = model.regenerates ? currentA * voltageV : 0;
        drawsA[i] = 0;
        continue;
      }
      const magnitudeA = Math.abs(currentA);
      const blend = blendAt(coldRow, magnitudeA * dutyPerA);
      drawsW[i] = (1 - blend) * magnitudeA * Math.abs(voltageV);
      drawsA[i] = blend * magnitudeA;
    }
  }

  /** Whether an evaluated point stays within the weakest bus and the regulator's current. */
  private isPossible(i: number): boolean {
    const { bus, drive, driveCount } = this.points.model;
    if (!(Math.abs(this.points.voltagesV[i]!) <= usableVoltageFraction * bus.weakV)) return false;
    if (bus.regulatorLimitA === Number.POSITIVE_INFINITY) return true;
    this.drawPoints(i, i + 1);
    const driveA = this.drawsW[i]! / bus.nominalV + this.drawsA[i]! + drive.idleCurrentA;
    return driveCount * driveA <= bus.regulatorLimitA;
  }

  private pointIsPossible(move: MoveGeometry, i: number, stretch: number): boolean {
    this.evaluate(move, stretch, i, i + 1);
    return this.isPossible(i);
  }

  /** The point that is impossible at a stretch, −1 when all are possible; leaves all points evaluated at it. */
  private impossiblePoint(move: MoveGeometry, stretch: number): number {
    const hardest = this.evaluate(move, stretch, 0, pointCount);
    if (!this.isPossible(hardest)) return hardest;
    if (this.points.model.bus.regulatorLimitA === Number.POSITIVE_INFINITY) return -1;
    for (let i = 0; i < pointCount; i++) if (!this.isPossible(i)) return i;
    return -1;
  }

  /** Smallest stretch that is possible, 0 when none is; leaves the points evaluated at it. */
  private stretchOf(move: MoveGeometry): number {
    let stretch = 1;
    for (;;) {
      const i = this.impossiblePoint(move, stretch);
      if (i < 0) return stretch;
      let impossible = stretch;
      let possible = stretch * stretchGrowth;
      while (!this.pointIsPossible(move, i, possible)) {
        if (possible > largestStretch) return 0;
        impossible = possible;
        possible *= stretchGrowth;
      }
      for (let halving = 0; halving < stretchHalvings; halving++) {
        const middle = (impossible + possible) / 2;
        if (this.pointIsPossible(move, i, middle)) possible = middle;
        else impossible = middle;
      }
      stretch = possible;
    }
  }
}
