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
  private hardest = 0;
  private drawW = 0;
  private drawA = 0;

  constructor(
    private readonly points: MovePoints,
    private readonly pack: PackSide,
    private readonly loads: CueLoads,
  ) {}

  /** Play it as cue `c`; returns how far it is stretched, 0 when it cannot be made. */
  play(move: MoveGeometry, c: number): number {
    const { points, pack, loads } = this;
    const { model } = points;
    points.layOut(move);
    const stretch = this.stretchOf(move);
    if (stretch === 0) return 0;
    loads.durationsS[c] = move.durationS * stretch;
    const idleA = model.drive.idleCurrentA;
    let powersW = 0;
    let currentsA = 0;
    let peakA = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < pointCount; i++) {
      this.drawPoint(i);
      const packA = pack.take(this.drawW, this.drawA, idleA);
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

  /** Current and voltage of one drive at a point. (M1, M11) */
  private evaluate(move: MoveGeometry, i: number, stretch: number): void {
    const { points } = this;
    const { load, drive } = points.model;
    const velocity = move.velocities[i]! / stretch;
    const acceleration = move.accelerations[i]! / (stretch * stretch);
    const ratio = move.ratios[i]!;
    const effort =
      points.statics[i]! +
      load.inertia * acceleration +
      load.dragCoefficient * velocity * Math.abs(velocity) +
      load.frictionEffort * move.direction;
    const along = ratio < 0 ? -move.direction : move.direction;
    const driveAcceleration = (ratio * acceleration + move.slopes[i]! * velocity * velocity) * along;
    const currentA =
      points.push(move, i, effort) + (drive.rotorInertia * driveAcceleration) / drive.speedConstant;
    const speed = Math.abs(ratio * velocity);
    points.speeds[i] = speed;
    points.currentsA[i] = currentA;
    points.voltagesV[i] = currentA * drive.resistanceOhm + drive.speedConstant * speed;
  }

  /** Draw of one drive on its bus at an evaluated point. (M11, M15) */
  private drawPoint(i: number): void {
    const { model, state, currentsA, voltagesV } = this.points;
    const currentA = currentsA[i]!;
    const voltageV = voltagesV[i]!;
    this.drawW = 0;
    this.drawA = 0;
    if (currentA < 0 && voltageV >= 0) {
      if (model.regenerates) this.drawW = currentA * voltageV;
      return;
    }
    const magnitudeA = Math.abs(currentA);
    const blend = blendAt(state.coldRow, (magnitudeA * state.ohm) / state.busV);
    this.drawW = (1 - blend) * magnitudeA * Math.abs(voltageV);
    this.drawA = blend * magnitudeA;
  }

  private pointIsPossible(move: MoveGeometry, i: number, stretch: number): boolean {
    const { bus, drive, driveCount } = this.points.model;
    this.evaluate(move, i, stretch);
    if (!(Math.abs(this.points.voltagesV[i]!) <= usableVoltageFraction * bus.weakV)) return false;
    if (bus.regulatorLimitA === Number.POSITIVE_INFINITY) return true;
    this.drawPoint(i);
    return driveCount * (this.drawW / bus.nominalV + this.drawA + drive.idleCurrentA) <= bus.regulatorLimitA;
  }

  private possibleAt(move: MoveGeometry, stretch: number): boolean {
    if (!this.pointIsPossible(move, this.hardest, stretch)) return false;
    for (let i = 0; i < pointCount; i++) {
      if (this.pointIsPossible(move, i, stretch)) continue;
      this.hardest = i;
      return false;
    }
    return true;
  }

  /** Smallest stretch that is possible, 0 when none is; leaves the points evaluated at it. */
  private stretchOf(move: MoveGeometry): number {
    let stretch = 1;
    while (!this.possibleAt(move, stretch)) {
      const i = this.hardest;
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
    return stretch;
  }
}
