import { motorCurrentA } from '../../physics/dc-motor.js';
import type { CandidateModel } from '../candidate-model.js';
import { type MoveGeometry, pointCount } from './cue-geometry.js';
import type { CueLoads } from './cue-loads.js';
import type { DriveState } from './drive-state.js';

/** The points of one move in one draw, as both kinds of control see them. Reused from move to move. */
export class MovePoints {
  /** Static effort of the feature. */
  readonly statics = new Float64Array(pointCount);
  /** Effort, speed, current and voltage of one drive, along the motion. */
  readonly efforts = new Float64Array(pointCount);
  readonly speeds = new Float64Array(pointCount);
  readonly currentsA = new Float64Array(pointCount);
  readonly voltagesV = new Float64Array(pointCount);
  model!: CandidateModel;
  state!: DriveState;
  private forwardConstant = 0;

  begin(model: CandidateModel, state: DriveState): void {
    this.model = model;
    this.state = state;
    this.forwardConstant = model.drive.forwardEfficiency * model.drive.speedConstant;
  }

  layOut(move: MoveGeometry): void {
    for (let i = 0; i < pointCount; i++) {
      this.statics[i] = this.state.still(this.model, move.positions[i]!, move.cosines[i]!, move.sines[i]!);
    }
  }

  /** Effort of one drive along the motion for an effort of the feature; returns the current without inertia. (M3, M11) */
  push(move: MoveGeometry, i: number, effort: number): number {
    const { coupling, drive } = this.model;
    const ratio = move.ratios[i]!;
    const perDrive = effort / (coupling.driveCount * ratio);
    const passed =
      effort * move.direction >= 0 ? perDrive / coupling.efficiency : perDrive * coupling.efficiency;
    const pushed = ratio < 0 ? -passed * move.direction : passed * move.direction;
    this.efforts[i] = pushed;
    return motorCurrentA(
      pushed,
      drive.noLoadCurrentA,
      this.forwardConstant,
      drive.speedConstant,
      drive.backwardEfficiency,
    );
  }

  /** Add the heat of a point to its cue, weighted. */
  addHeat(loads: CueLoads, c: number, i: number, weight: number): void {
    const { model, state } = this;
    const currentA = this.currentsA[i]!;
    const backV = model.drive.speedConstant * this.speeds[i]!;
    loads.coolHeatsW[c]! += weight * state.copperHeat(model, state.coolRow, state.coolRatio, currentA, backV);
    loads.warmHeatsW[c]! += weight * state.copperHeat(model, state.warmRow, state.warmRatio, currentA, backV);
    const gearW = backV * currentA - this.efforts[i]! * this.speeds[i]!;
    if (gearW > 0) loads.gearHeatsW[c]! += weight * gearW;
  }
}
