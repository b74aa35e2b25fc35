import { copperResistanceRatio } from '../../physics/dc-motor.js';
import { springEffort } from '../../physics/load.js';
import type { CandidateModel } from '../candidate-model.js';
import { blendAt, blendPointCount, blendRow } from './blend-table.js';

/** Winding temperatures above the air at which heat is worked out; between and beyond it goes straight. */
export const coolRiseK = 20;
export const warmRiseK = 120;

/** The numbers of one candidate in one draw, pulled out of its model so that the inner loops read plain fields. */
export class DriveState {
  readonly coldRow = new Float64Array(blendPointCount);
  readonly coolRow = new Float64Array(blendPointCount);
  readonly warmRow = new Float64Array(blendPointCount);
  ohm = 0;
  coolRatio = 1;
  warmRatio = 1;
  busV = 0;
  /** Gravity effort is even + cosine·cos x − sine·sin x; on a slide only the first is there. */
  private evenEffort = 0;
  private cosineEffort = 0;
  private sineEffort = 0;

  /** Take over a model; `airK` sets the temperatures at which heat is worked out. */
  load(model: CandidateModel, airK: number): void {
    const { drive, bus, load } = model;
    this.ohm = drive.resistanceOhm;
    this.busV = bus.nominalV;
    this.coolRatio = copperResistanceRatio(airK + coolRiseK);
    this.warmRatio = copperResistanceRatio(airK + warmRiseK);
    const { isHinge, gravityEffort, leanRad } = load;
    this.evenEffort = isHinge ? 0 : gravityEffort;
    this.cosineEffort = isHinge ? gravityEffort * Math.cos(leanRad) : 0;
    this.sineEffort = isHinge ? gravityEffort * Math.sin(leanRad) : 0;
    if (!drive.pulsed) return;
    blendRow(drive.pulseRatio, this.coldRow);
    blendRow(drive.pulseRatio * this.coolRatio, this.coolRow);
    blendRow(drive.pulseRatio * this.warmRatio, this.warmRow);
  }

  /** Gravity effort of the feature at a position given by its cosine and sine. */
  gravity(cosine: number, sine: number): number {
    return this.evenEffort + this.cosineEffort * cosine - this.sineEffort * sine;
  }

  /** Static effort: gravity less the assist spring. */
  still(model: CandidateModel, position: number, cosine: number, sine: number): number {
    const gravity = this.gravity(cosine, sine);
    const { spring } = model.load;
    return spring.form === 'none' ? gravity : gravity - springEffort(spring, position);
  }

  /** Blend of the pulses at a motor current, with the copper as listed. */
  blend(magnitudeA: number): number {
    return blendAt(this.coldRow, (magnitudeA * this.ohm) / this.busV);
  }

  /** Heat in the copper of one drive at a current and back voltage, copper warmer by a ratio. (M15, M19) */
  copperHeat(
    model: CandidateModel,
    row: Float64Array,
    warm: number,
    currentA: number,
    backV: number,
  ): number {
    const ohm = this.ohm * warm;
    const voltageV = currentA * ohm + backV;
    if (!model.drive.pulsed) return currentA * currentA * ohm;
    if (currentA < 0 && voltageV >= 0) {
      return model.regenerates ? currentA * currentA * ohm : -backV * currentA;
    }
    const magnitudeA = Math.abs(currentA);
    const blend = blendAt(row, (magnitudeA * ohm) / this.busV);
    const share = Math.abs(voltageV) / this.busV;
    return this.busV * magnitudeA * (share + blend * (1 - share)) - backV * currentA;
  }
}
