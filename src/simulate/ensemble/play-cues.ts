import { holdCurrentA, motorCurrentA } from '../../physics/dc-motor.js';
import type { Load } from '../../study/supply.js';
import { type CandidateModel, usableVoltageFraction } from '../candidate-model.js';
import type { BusDraw } from '../motor-point.js';
import { loadsDraw } from '../play-loop.js';
import { blendAt } from './blend-table.js';
import {
  type CueGeometry,
  intervalCount,
  type MoveGeometry,
  type PoseGeometry,
  pointCount,
} from './cue-geometry.js';
import type { CueLoads } from './cue-loads.js';
import type { DriveState } from './drive-state.js';

/** How a list of cues went in one draw. */
export interface PlayOutcome {
  /** Whether every move and hold was possible. */
  possible: boolean;
  writtenMoveS: number;
  /** Σ written time over fidelity of each move. */
  stretchedMoveS: number;
  /** ∫ over the hold cues: pack current with idle; time. */
  holdChargeC: number;
  holdS: number;
  /** Largest pack current at nominal voltage. */
  peakCurrentA: number;
}

/** Distinct sizes of one bounce of the carrier, sin φ at eight points, and how often each occurs. */
const bounceLifts = [0, Math.SQRT1_2, 1, -Math.SQRT1_2, -1];
const bounceShares = [2 / 8, 2 / 8, 1 / 8, 2 / 8, 1 / 8];

/** The stretch is searched like the nominal one, with wider steps and fewer halvings. */
const stretchGrowth = 1.15;
const stretchHalvings = 12;
const largestStretch = 1000;

/** What a pose takes in one draw; worked out once and used by all holds at it. */
class PoseDraw {
  powerW = 0;
  currentA = 0;
  coolHeatW = 0;
  warmHeatW = 0;
  /** 0 when the weakest bus or the regulator cannot hold it. */
  possible = true;
}

/** Plays one cue list of one candidate, draw after draw, without allocating. */
export class CueKernel {
  private readonly poses: PoseDraw[];
  private readonly statics = new Float64Array(pointCount);
  private readonly currentsA = new Float64Array(pointCount);
  private readonly voltagesV = new Float64Array(pointCount);
  private readonly efforts = new Float64Array(pointCount);
  private readonly speeds = new Float64Array(pointCount);
  private readonly beside: BusDraw = { powerW: 0, currentA: 0 };
  private readonly out: PlayOutcome = {
    possible: true,
    writtenMoveS: 0,
    stretchedMoveS: 0,
    holdChargeC: 0,
    holdS: 0,
    peakCurrentA: 0,
  };
  private hardest = 0;
  private model!: CandidateModel;
  private state!: DriveState;
  private forwardConstant = 0;

  constructor(
    private readonly geometry: CueGeometry,
    private readonly loads: CueLoads,
  ) {
    this.poses = geometry.poses.map(() => new PoseDraw());
  }

  /** Play the list in one draw; the result is overwritten by the next. */
  play(
    model: CandidateModel,
    state: DriveState,
    besideLoads: readonly Load[],
    heatBounce: number,
  ): PlayOutcome {
    const { geometry, loads, out } = this;
    this.model = model;
    this.state = state;
    this.forwardConstant = model.drive.forwardEfficiency * model.drive.speedConstant;
    out.possible = true;
    out.writtenMoveS = 0;
    out.stretchedMoveS = 0;
    out.holdChargeC = 0;
    out.holdS = 0;
    out.peakCurrentA = 0;
    loads.totalS = 0;
    for (let i = 0; i < this.poses.length; i++) this.drawPose(geometry.poses[i]!, this.poses[i]!, heatBounce);
    for (let c = 0; c < geometry.cues.length; c++) {
      const cue = geometry.cues[c]!;
      const moving = cue.action === 'move';
      loadsDraw(besideLoads, cue.lightsFraction, moving, model.bus.packNominalV, this.beside);
      loads.coolHeatsW[c] = 0;
      loads.warmHeatsW[c] = 0;
      loads.gearHeatsW[c] = 0;
      if (moving) {
        const move = geometry.moves[geometry.indexes[c]!]!;
        out.writtenMoveS += move.durationS;
        if (model.switched) this.switchedMove(move, c, besideLoads);
        else this.positionedMove(move, c);
        if (!out.possible) return out;
      } else if (cue.action === 'hold') {
        this.hold(this.poses[geometry.indexes[c]!]!, c, cue.durationS);
      } else {
        this.still(c, cue.durationS, 0, 0, model.poweredAtRest ? model.drive.idleCurrentA : 0);
      }
      loads.totalS += loads.durationsS[c]!;
    }
    return out;
  }

  private drawPose(pose: PoseGeometry, into: PoseDraw, heatBounce: number): void {
    const { model, state } = this;
    const { coupling, drive, bus } = model;
    const gravity = state.gravity(model, pose.cosine, pose.sine);
    const still = state.still(model, pose.position, pose.cosine, pose.sine);
    const perDrive = 1 / (coupling.driveCount * pose.ratio);
    into.powerW = 0;
    into.currentA = 0;
    into.coolHeatW = 0;
    into.warmHeatW = 0;
    into.possible = true;
    if (model.unpoweredHold) return;
    const currentA = this.holdCurrent(Math.abs(still * perDrive), drive.holdFrictionFraction);
    const voltageV = currentA * state.ohm;
    const blend = drive.pulsed ? state.blend(currentA) : 1;
    into.powerW = (1 - blend) * currentA * voltageV * model.holdCorrectionRatio;
    into.currentA = blend * currentA * model.holdCorrectionRatio;
    const hardest = this.holdCurrent(Math.abs(still * perDrive), 1) * state.ohm;
    into.possible = hardest <= usableVoltageFraction * bus.weakV;
    const needA = model.driveCount * (into.powerW / bus.nominalV + into.currentA + drive.idleCurrentA);
    if (needA > bus.regulatorLimitA) into.possible = false;
    const points = heatBounce > 0 ? bounceLifts.length : 1;
    for (let j = 0; j < points; j++) {
      const lifted = still + gravity * heatBounce * bounceLifts[j]!;
      const liftedA = this.holdCurrent(Math.abs(lifted * perDrive), drive.holdFrictionFraction);
      const share = (points === 1 ? 1 : bounceShares[j]!) * model.holdCorrectionRatio;
      into.coolHeatW += share * state.copperHeat(model, state.coolRow, state.coolRatio, liftedA, 0);
      into.warmHeatW += share * state.copperHeat(model, state.warmRow, state.warmRatio, liftedA, 0);
    }
  }

  private holdCurrent(effort: number, frictionFraction: number): number {
    const { drive } = this.model;
    if (effort < 1e-6 * drive.stallEffort) return 0;
    return holdCurrentA(
      effort,
      drive.noLoadCurrentA,
      this.forwardConstant,
      drive.speedConstant,
      drive.backwardEfficiencyStatic,
      frictionFraction,
    );
  }

  private hold(pose: PoseDraw, c: number, durationS: number): void {
    const { model, loads, out } = this;
    const { bus, drive, driveCount } = model;
    const idleA = model.unpoweredHold ? 0 : drive.idleCurrentA;
    if (!pose.possible) out.possible = false;
    this.still(c, durationS, pose.powerW, pose.currentA, idleA);
    loads.coolHeatsW[c] = pose.coolHeatW;
    loads.warmHeatsW[c] = pose.warmHeatW;
    const busA = driveCount * (pose.powerW / bus.nominalV + pose.currentA + idleA);
    const packA = bus.regulated ? (bus.nominalV * busA) / (bus.regulatorEfficiency * bus.packNominalV) : busA;
    out.holdChargeC += packA * durationS;
    out.holdS += durationS;
  }

  /** A cue of one constant load. */
  private still(c: number, durationS: number, powerW: number, currentA: number, idleA: number): void {
    const { loads } = this;
    loads.durationsS[c] = durationS;
    this.onPack(powerW, currentA, idleA);
    loads.powersW[c] = this.packW;
    loads.currentsA[c] = this.packA;
    loads.peakPowersW[c] = this.packW;
    loads.peakCurrentsA[c] = this.packA;
    this.notePeak();
  }

  private packW = 0;
  private packA = 0;

  /** One drive's draw on its bus, as a draw on the pack with everything beside it, into `packW` and `packA`. */
  private onPack(powerW: number, currentA: number, idleA: number): void {
    const { model, beside } = this;
    const { bus, driveCount } = model;
    if (bus.regulated) {
      const busA = Math.max(0, driveCount * (powerW / bus.nominalV + currentA + idleA));
      this.packW = beside.powerW + (bus.nominalV * busA) / bus.regulatorEfficiency;
      this.packA = beside.currentA;
    } else {
      this.packW = beside.powerW + driveCount * powerW;
      this.packA = beside.currentA + driveCount * (currentA + idleA);
    }
  }

  private notePeak(): void {
    const currentA = this.packW / this.model.bus.packNominalV + this.packA;
    if (currentA > this.out.peakCurrentA) this.out.peakCurrentA = currentA;
  }

  /** Current and voltage of one drive at a point of a move. (M1, M3, M11) */
  private evaluate(move: MoveGeometry, i: number, stretch: number): void {
    const { load, coupling, drive } = this.model;
    const { direction } = move;
    const velocity = move.velocities[i]! / stretch;
    const acceleration = move.accelerations[i]! / (stretch * stretch);
    const ratio = move.ratios[i]!;
    const effort =
      this.statics[i]! +
      load.inertia * acceleration +
      load.dragCoefficient * velocity * Math.abs(velocity) +
      load.frictionEffort * direction;
    const along = ratio < 0 ? -direction : direction;
    const perDrive = effort / (coupling.driveCount * ratio);
    const pushed =
      (effort * direction >= 0 ? perDrive / coupling.efficiency : perDrive * coupling.efficiency) * along;
    const driveAcceleration = (ratio * acceleration + move.slopes[i]! * velocity * velocity) * along;
    const currentA =
      motorCurrentA(
        pushed,
        drive.noLoadCurrentA,
        this.forwardConstant,
        drive.speedConstant,
        drive.backwardEfficiency,
      ) +
      (drive.rotorInertia * driveAcceleration) / drive.speedConstant;
    const speed = Math.abs(ratio * velocity);
    this.efforts[i] = pushed;
    this.speeds[i] = speed;
    this.currentsA[i] = currentA;
    this.voltagesV[i] = currentA * drive.resistanceOhm + drive.speedConstant * speed;
  }

  private pointIsPossible(move: MoveGeometry, i: number, stretch: number): boolean {
    const { model } = this;
    this.evaluate(move, i, stretch);
    if (!(Math.abs(this.voltagesV[i]!) <= usableVoltageFraction * model.bus.weakV)) return false;
    if (model.bus.regulatorLimitA === Number.POSITIVE_INFINITY) return true;
    this.drawPoint(i);
    const { bus, drive, driveCount } = model;
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

  /** Smallest stretch that is possible, 0 when none is; leaves the points evaluated at it. (M16) */
  private stretchOf(move: MoveGeometry): number {
    if (this.possibleAt(move, 1)) return 1;
    let below = 1;
    while (below < largestStretch) {
      const above = below * stretchGrowth;
      if (!this.possibleAt(move, above)) {
        below = above;
        continue;
      }
      let possible = above;
      let impossible = below;
      for (let halving = 0; halving < stretchHalvings; halving++) {
        const middle = (impossible + possible) / 2;
        if (this.possibleAt(move, middle)) possible = middle;
        else impossible = middle;
      }
      for (let i = 0; i < pointCount; i++) this.evaluate(move, i, possible);
      return possible;
    }
    return 0;
  }

  private drawW = 0;
  private drawA = 0;

  /** Draw of one drive on its bus at an evaluated point, into `drawW` and `drawA`. (M11, M15) */
  private drawPoint(i: number): void {
    const { model, state } = this;
    const currentA = this.currentsA[i]!;
    const voltageV = this.voltagesV[i]!;
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

  private positionedMove(move: MoveGeometry, c: number): void {
    const { model, state, loads, out } = this;
    for (let i = 0; i < pointCount; i++) {
      this.statics[i] = state.still(model, move.positions[i]!, move.cosines[i]!, move.sines[i]!);
    }
    const stretch = this.stretchOf(move);
    if (stretch === 0) {
      out.possible = false;
      return;
    }
    loads.durationsS[c] = move.durationS * stretch;
    out.stretchedMoveS += move.durationS * stretch;
    const idleA = model.drive.idleCurrentA;
    let powersW = 0;
    let currentsA = 0;
    let peakA = -1;
    for (let i = 0; i < pointCount; i++) {
      this.drawPoint(i);
      this.onPack(this.drawW, this.drawA, idleA);
      const currentA = this.packW / model.bus.packNominalV + this.packA;
      if (currentA > peakA) {
        peakA = currentA;
        loads.peakPowersW[c] = this.packW;
        loads.peakCurrentsA[c] = this.packA;
      }
      if (i % 2 === 0) continue;
      powersW += this.packW;
      currentsA += this.packA;
      this.addMoveHeat(c, i, 1 / intervalCount);
    }
    loads.powersW[c] = powersW / intervalCount;
    loads.currentsA[c] = currentsA / intervalCount;
    if (peakA > out.peakCurrentA) out.peakCurrentA = peakA;
  }

  private addMoveHeat(c: number, i: number, share: number): void {
    const { model, state, loads } = this;
    const currentA = this.currentsA[i]!;
    const backV = model.drive.speedConstant * this.speeds[i]!;
    loads.coolHeatsW[c]! += share * state.copperHeat(model, state.coolRow, state.coolRatio, currentA, backV);
    loads.warmHeatsW[c]! += share * state.copperHeat(model, state.warmRow, state.warmRatio, currentA, backV);
    const gearW = backV * currentA - this.efforts[i]! * this.speeds[i]!;
    if (gearW > 0) loads.gearHeatsW[c]! += share * gearW;
  }

  /** A switched move: speeds follow from the bus of a half-full pack, in equal steps of travel. (M16) */
  private switchedMove(move: MoveGeometry, c: number, besideLoads: readonly Load[]): void {
    const { model, out } = this;
    const { load, coupling, drive, bus } = model;
    const { direction } = move;
    let playedS = 0;
    let chargeC = 0;
    let largestA = 0;
    for (let i = 0; i < pointCount; i++) {
      const ratio = move.ratios[i]!;
      const along = ratio < 0 ? -direction : direction;
      const still =
        this.state.still(model, move.positions[i]!, move.cosines[i]!, move.sines[i]!) +
        load.frictionEffort * direction;
      let velocity = 0;
      let speed = 0;
      // One more round takes the drag at the first round's speed along.
      const rounds = load.dragCoefficient > 0 ? 4 : 1;
      for (let round = 0; round < rounds; round++) {
        const effort = still + load.dragCoefficient * velocity * velocity * direction;
        const perDrive = effort / (coupling.driveCount * ratio);
        const pushed =
          (effort * direction >= 0 ? perDrive / coupling.efficiency : perDrive * coupling.efficiency) * along;
        const currentA = motorCurrentA(
          pushed,
          drive.noLoadCurrentA,
          this.forwardConstant,
          drive.speedConstant,
          drive.backwardEfficiency,
        );
        speed = (bus.middleV - currentA * drive.resistanceOhm) / drive.speedConstant;
        const found = Math.max(0, speed / Math.abs(ratio));
        velocity = round === 0 ? found : (velocity + found) / 2;
        this.efforts[i] = pushed;
        this.currentsA[i] = currentA;
      }
      this.speeds[i] = speed;
      if (!(speed > 0)) {
        out.possible = false;
        return;
      }
      const drawnA = Math.max(0, this.currentsA[i]!);
      if (drawnA > largestA) largestA = drawnA;
      if (i % 2 === 0) continue;
      const pieceS = (Math.abs(move.travel) / intervalCount) * (Math.abs(ratio) / speed);
      playedS += pieceS;
      chargeC += drawnA * pieceS;
      this.addMoveHeat(c, i, pieceS);
    }
    const ratio = playedS / move.durationS;
    out.stretchedMoveS += move.durationS * Math.max(ratio, 1 / ratio);
    this.finishSwitched(move, c, playedS, chargeC, largestA, besideLoads);
  }

  /** Running and waiting of a switched move as one cue: its mean, its peak, its heat. */
  private finishSwitched(
    move: MoveGeometry,
    c: number,
    playedS: number,
    chargeC: number,
    largestA: number,
    besideLoads: readonly Load[],
  ): void {
    const { model, loads, geometry, beside } = this;
    const idleA = model.drive.idleCurrentA;
    const waitS = Math.max(0, move.durationS - playedS);
    const totalS = playedS + waitS;
    this.onPack(0, largestA, idleA);
    loads.peakPowersW[c] = this.packW;
    loads.peakCurrentsA[c] = this.packA;
    this.notePeak();
    this.onPack(0, chargeC / playedS, idleA);
    let energyJ = this.packW * playedS;
    let packC = this.packA * playedS;
    if (waitS > 0) {
      const pose = this.poses[geometry.endPoses[c]!]!;
      loadsDraw(besideLoads, geometry.cues[c]!.lightsFraction, false, model.bus.packNominalV, beside);
      this.onPack(pose.powerW, pose.currentA, model.unpoweredHold ? 0 : idleA);
      energyJ += this.packW * waitS;
      packC += this.packA * waitS;
      loads.coolHeatsW[c]! += pose.coolHeatW * waitS;
      loads.warmHeatsW[c]! += pose.warmHeatW * waitS;
    }
    loads.durationsS[c] = totalS;
    loads.powersW[c] = energyJ / totalS;
    loads.currentsA[c] = packC / totalS;
    loads.coolHeatsW[c]! /= totalS;
    loads.warmHeatsW[c]! /= totalS;
    loads.gearHeatsW[c]! /= totalS;
  }
}
