import type { Load } from '../../study/supply.js';
import type { CandidateModel } from '../candidate-model.js';
import type { BusDraw } from '../motor-point.js';
import { loadsDraw } from '../play-loop.js';

/** Turns the draw of one drive on its bus into that of everything on the pack: I = powerW/V + currentA. */
export class PackSide {
  powerW = 0;
  currentA = 0;
  /** Largest current at nominal voltage since `begin`. */
  peakA = 0;
  private readonly beside: BusDraw = { powerW: 0, currentA: 0 };
  private model!: CandidateModel;
  private loads: readonly Load[] = [];

  begin(model: CandidateModel, loads: readonly Load[]): void {
    this.model = model;
    this.loads = loads;
    this.peakA = 0;
  }

  /** What is drawn beside the drives from now on. */
  cue(lightsFraction: number, moving: boolean): void {
    loadsDraw(this.loads, lightsFraction, moving, this.model.bus.packNominalV, this.beside);
  }

  /** Take the draw of one drive, its idle current apart; returns the pack current at nominal voltage. */
  take(powerW: number, currentA: number, idleA: number): number {
    const { model, beside } = this;
    const { bus, driveCount } = model;
    if (bus.regulated) {
      const busA = Math.max(0, driveCount * (powerW / bus.nominalV + currentA + idleA));
      this.powerW = beside.powerW + (bus.nominalV * busA) / bus.regulatorEfficiency;
      this.currentA = beside.currentA;
    } else {
      this.powerW = beside.powerW + driveCount * powerW;
      this.currentA = beside.currentA + driveCount * (currentA + idleA);
    }
    const packA = this.powerW / bus.packNominalV + this.currentA;
    if (packA > this.peakA) this.peakA = packA;
    return packA;
  }
}
