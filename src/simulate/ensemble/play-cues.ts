import type { Load } from '../../study/supply.js';
import type { CandidateModel } from '../candidate-model.js';
import type { CueGeometry } from './cue-geometry.js';
import type { CueLoads } from './cue-loads.js';
import type { DriveState } from './drive-state.js';
import { MovePoints } from './move-points.js';
import { PackSide } from './pack-side.js';
import { PoseDraw } from './pose-draw.js';
import { PositionMove } from './position-move.js';
import { SwitchedRun } from './switched-run.js';

/** How a list of cues went in one draw. */
export interface PlayOutcome {
  /** Whether every move could be made, and every hold held. */
  moves: boolean;
  holds: boolean;
  writtenMoveS: number;
  /** Σ written time over the fidelity of each move. */
  stretchedMoveS: number;
  /** Charge of the hold cues at nominal voltage, idle current included, and their time. */
  holdChargeC: number;
  holdS: number;
  /** Largest pack current at nominal voltage. */
  peakCurrentA: number;
}

/** Plays one cue list of one candidate into its cue loads, draw after draw, without allocating. */
export class CueKernel {
  private readonly poses: PoseDraw[];
  private readonly points = new MovePoints();
  private readonly pack = new PackSide();
  private readonly positioned: PositionMove;
  private readonly switched: SwitchedRun;
  private readonly out: PlayOutcome = {
    moves: true,
    holds: true,
    writtenMoveS: 0,
    stretchedMoveS: 0,
    holdChargeC: 0,
    holdS: 0,
    peakCurrentA: 0,
  };

  constructor(
    private readonly geometry: CueGeometry,
    private readonly loads: CueLoads,
  ) {
    this.poses = geometry.poses.map(() => new PoseDraw());
    this.positioned = new PositionMove(this.points, this.pack, loads);
    this.switched = new SwitchedRun(this.points, this.pack, loads);
  }

  /** Play the list in one draw; the result is overwritten by the next. */
  play(model: CandidateModel, state: DriveState, beside: readonly Load[], heatBounce: number): PlayOutcome {
    const { geometry, loads, out, pack, points } = this;
    pack.begin(model, beside);
    points.begin(model, state);
    out.moves = true;
    out.holds = true;
    out.writtenMoveS = 0;
    out.stretchedMoveS = 0;
    out.holdChargeC = 0;
    out.holdS = 0;
    loads.totalS = 0;
    for (let i = 0; i < this.poses.length; i++) {
      this.poses[i]!.draw(geometry.poses[i]!, model, state, heatBounce);
    }
    for (let c = 0; c < geometry.cues.length; c++) {
      const cue = geometry.cues[c]!;
      loads.coolHeatsW[c] = 0;
      loads.warmHeatsW[c] = 0;
      loads.gearHeatsW[c] = 0;
      pack.cue(cue.lightsFraction, cue.action === 'move');
      if (cue.action === 'move') this.move(c, model);
      else if (cue.action === 'hold') this.hold(c, model);
      else this.still(c, 0, 0, model.poweredAtRest ? model.drive.idleCurrentA : 0);
      loads.totalS += loads.durationsS[c]!;
    }
    out.peakCurrentA = pack.peakA;
    return out;
  }

  private move(c: number, model: CandidateModel): void {
    const { geometry, out } = this;
    const move = geometry.moves[geometry.indexes[c]!]!;
    const waiting = this.poses[geometry.endPoses[c]!]!;
    const ratio = model.switched
      ? this.switched.play(move, c, waiting, geometry.cues[c]!.lightsFraction)
      : this.positioned.play(move, c);
    if (ratio === 0) {
      // The rest is still played, because what holding takes can be told all the same.
      out.moves = false;
      this.loads.durationsS[c] = 0;
      return;
    }
    out.writtenMoveS += move.durationS;
    out.stretchedMoveS += move.durationS * Math.max(ratio, 1 / ratio);
  }

  private hold(c: number, model: CandidateModel): void {
    const { geometry, loads, out } = this;
    const pose = this.poses[geometry.indexes[c]!]!;
    const { bus, drive, driveCount } = model;
    const idleA = model.unpoweredHold ? 0 : drive.idleCurrentA;
    if (!pose.possible) out.holds = false;
    this.still(c, pose.powerW, pose.currentA, idleA);
    loads.coolHeatsW[c] = pose.coolHeatW;
    loads.warmHeatsW[c] = pose.warmHeatW;
    const busA = driveCount * (pose.powerW / bus.nominalV + pose.currentA + idleA);
    const packA = bus.regulated ? (bus.nominalV * busA) / (bus.regulatorEfficiency * bus.packNominalV) : busA;
    const { durationS } = geometry.cues[c]!;
    out.holdChargeC += packA * durationS;
    out.holdS += durationS;
  }

  /** A cue of one constant load. */
  private still(c: number, powerW: number, currentA: number, idleA: number): void {
    const { loads, pack } = this;
    pack.take(powerW, currentA, idleA);
    loads.durationsS[c] = this.geometry.cues[c]!.durationS;
    loads.powersW[c] = pack.powerW;
    loads.currentsA[c] = pack.currentA;
    loads.peakPowersW[c] = pack.powerW;
    loads.peakCurrentsA[c] = pack.currentA;
  }
}
