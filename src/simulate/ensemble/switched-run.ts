import { intervalCount, type MoveGeometry, pointCount } from './cue-geometry.js';
import type { CueLoads } from './cue-loads.js';
import type { MovePoints } from './move-points.js';
import type { PackSide } from './pack-side.js';
import type { PoseDraw } from './pose-draw.js';

/** Rounds of putting the drag at the found speed back into the balance. */
const dragRounds = 4;

/** A move of a switched drive, draw after draw: its speed follows from the bus of a half-full pack. (M16) */
export class SwitchedRun {
  constructor(
    private readonly points: MovePoints,
    private readonly pack: PackSide,
    private readonly loads: CueLoads,
  ) {}

  /**
   * Play it as cue `c`, standing still at its end for what is left of the written time.
   * @param waiting what the drive takes at the end
   * @returns played over written time; 0 when it stalls on the way
   */
  play(move: MoveGeometry, c: number, waiting: PoseDraw, lightsFraction: number): number {
    const { points, loads } = this;
    points.layOut(move);
    let playedS = 0;
    let chargeC = 0;
    let largestA = 0;
    for (let i = 0; i < pointCount; i++) {
      if (!this.balance(move, i)) return 0;
      const drawnA = Math.max(0, points.currentsA[i]!);
      if (drawnA > largestA) largestA = drawnA;
      if (i % 2 === 0) continue;
      const ratio = Math.abs(move.ratios[i]!);
      const pieceS = (Math.abs(move.travel) / intervalCount) * (ratio / points.speeds[i]!);
      playedS += pieceS;
      chargeC += drawnA * pieceS;
      points.addHeat(loads, c, i, pieceS);
    }
    this.finish(move, c, playedS, chargeC, largestA, waiting, lightsFraction);
    return playedS / move.durationS;
  }

  /** Speed and current at a point; false when it stalls there. */
  private balance(move: MoveGeometry, i: number): boolean {
    const { points } = this;
    const { load, drive, bus } = points.model;
    const still = points.statics[i]! + load.frictionEffort * move.direction;
    const rounds = load.dragCoefficient > 0 ? dragRounds : 1;
    let velocity = 0;
    let speed = 0;
    for (let round = 0; round < rounds; round++) {
      const drag = load.dragCoefficient * velocity * velocity * move.direction;
      const currentA = points.push(move, i, still + drag);
      points.currentsA[i] = currentA;
      speed = (bus.middleV - currentA * drive.resistanceOhm) / drive.speedConstant;
      const found = Math.max(0, speed / Math.abs(move.ratios[i]!));
      velocity = round === 0 ? found : (velocity + found) / 2;
    }
    points.speeds[i] = speed;
    return speed > 0;
  }

  /** Running and waiting as one cue: its mean, its peak, its heat. */
  private finish(
    move: MoveGeometry,
    c: number,
    playedS: number,
    chargeC: number,
    largestA: number,
    waiting: PoseDraw,
    lightsFraction: number,
  ): void {
    const { pack, loads, points } = this;
    const { model } = points;
    const idleA = model.drive.idleCurrentA;
    const waitS = Math.max(0, move.durationS - playedS);
    const totalS = playedS + waitS;
    pack.take(0, largestA, idleA);
    loads.peakPowersW[c] = pack.powerW;
    loads.peakCurrentsA[c] = pack.currentA;
    pack.take(0, chargeC / playedS, idleA);
    let energyJ = pack.powerW * playedS;
    let packC = pack.currentA * playedS;
    if (waitS > 0) {
      pack.cue(lightsFraction, false);
      pack.take(waiting.powerW, waiting.currentA, model.unpoweredHold ? 0 : idleA);
      energyJ += pack.powerW * waitS;
      packC += pack.currentA * waitS;
      loads.coolHeatsW[c]! += waiting.coolHeatW * waitS;
      loads.warmHeatsW[c]! += waiting.warmHeatW * waitS;
    }
    loads.durationsS[c] = totalS;
    loads.powersW[c] = energyJ / totalS;
    loads.currentsA[c] = packC / totalS;
    loads.coolHeatsW[c]! /= totalS;
    loads.warmHeatsW[c]! /= totalS;
    loads.gearHeatsW[c]! /= totalS;
  }
}
