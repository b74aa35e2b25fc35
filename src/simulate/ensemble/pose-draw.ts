import { type CandidateModel, usableVoltageFraction } from '../candidate-model.js';
import { holdMotorCurrentA } from '../hold.js';
import type { PoseGeometry } from './cue-geometry.js';
import type { DriveState } from './drive-state.js';

/** Distinct sizes of one bounce of the carrier, sin φ at eight points, and how often each occurs. */
const bounceLifts = [0, Math.SQRT1_2, 1, -Math.SQRT1_2, -1];
const bounceShares = [2 / 8, 2 / 8, 1 / 8, 2 / 8, 1 / 8];

/** What holding a pose takes in one draw; worked out once and used by all holds at it. */
export class PoseDraw {
  /** Draw of one drive on its bus, idle current left out. */
  powerW = 0;
  currentA = 0;
  /** Heat in the copper at the two test temperatures, averaged over the bounce. */
  coolHeatW = 0;
  warmHeatW = 0;
  /** Whether the weakest bus and the regulator can hold it. */
  possible = true;

  draw(pose: PoseGeometry, model: CandidateModel, state: DriveState, heatBounce: number): void {
    this.powerW = 0;
    this.currentA = 0;
    this.coolHeatW = 0;
    this.warmHeatW = 0;
    this.possible = true;
    if (model.unpoweredHold) return;
    const { coupling, drive, bus } = model;
    const gravity = state.gravity(pose.cosine, pose.sine);
    const still = state.still(model, pose.position, pose.cosine, pose.sine);
    const perDrive = 1 / (coupling.driveCount * pose.ratio);
    const currentA = holdMotorCurrentA(drive, still * perDrive, drive.holdFrictionFraction);
    const blend = drive.pulsed ? state.blend(currentA) : 1;
    this.powerW = (1 - blend) * currentA * currentA * state.ohm * model.holdCorrectionRatio;
    this.currentA = blend * currentA * model.holdCorrectionRatio;
    const hardestV = holdMotorCurrentA(drive, still * perDrive, 1) * state.ohm;
    const needA = model.driveCount * (this.powerW / bus.nominalV + this.currentA + drive.idleCurrentA);
    this.possible = hardestV <= usableVoltageFraction * bus.weakV && needA <= bus.regulatorLimitA;
    const points = heatBounce > 0 ? bounceLifts.length : 1;
    for (let j = 0; j < points; j++) {
      const lifted = still + gravity * heatBounce * bounceLifts[j]!;
      const liftedA = holdMotorCurrentA(drive, lifted * perDrive, drive.holdFrictionFraction);
      const share = (points === 1 ? 1 : bounceShares[j]!) * model.holdCorrectionRatio;
      this.coolHeatW += share * state.copperHeat(model, state.coolRow, state.coolRatio, liftedA, 0);
      this.warmHeatW += share * state.copperHeat(model, state.warmRow, state.warmRatio, liftedA, 0);
    }
  }
}
