import { copperResistanceRatio } from '../physics/dc-motor.js';
import { driveEffortAtRest, speedRatio } from '../physics/linkage.js';
import { gravityEffortAt, springEffort } from '../physics/load.js';
import { pulseBlend } from '../physics/pulse-drive.js';
import { gearHeatW } from '../physics/thermal.js';
import type { CandidateModel } from './candidate-model.js';
import { holdMotorCurrentA } from './hold.js';
import { type LoopSamples, sampleKinds } from './loop-samples.js';

/** Points of one bounce over which the hold heat is averaged. */
const bouncePoints = 8;

/** Heat in the copper of one drive at a current, a speed and a winding temperature. (M15, M19) */
export function copperHeatW(
  model: CandidateModel,
  currentA: number,
  speed: number,
  windingK: number,
): number {
  const warm = copperResistanceRatio(windingK);
  const ohm = model.drive.resistanceOhm * warm;
  const backV = model.drive.speedConstant * speed;
  const voltageV = currentA * ohm + backV;
  if (!model.drive.pulsed || (currentA < 0 && voltageV >= 0)) return currentA * currentA * ohm;
  const busV = model.bus.nominalV;
  const magnitudeA = Math.abs(currentA);
  // Warm copper shortens L/R, so the pulses look slower by the same ratio.
  const blend = pulseBlend(Math.min(1, (magnitudeA * ohm) / busV), model.drive.pulseRatio * warm);
  const share = Math.abs(voltageV) / busV;
  return busV * magnitudeA * (share + blend * (1 - share)) - backV * currentA;
}

/** Motor currents of a hold over one bounce of the carrier: g·(1 + b·sin φ). */
export function bounceCurrentsA(model: CandidateModel, position: number, bounceFraction: number): number[] {
  const gravity = gravityEffortAt(model.load, position);
  const spring = springEffort(model.load.spring, position);
  const ratio = speedRatio(model.coupling, position);
  const points = bounceFraction > 0 ? bouncePoints : 1;
  return Array.from({ length: points }, (_, j) => {
    const lift = bounceFraction * Math.sin((2 * Math.PI * j) / points);
    const effort = driveEffortAtRest(gravity * (1 + lift) - spring, ratio, model.coupling);
    return holdMotorCurrentA(model.drive, effort, model.drive.holdFrictionFraction);
  });
}

/** Heat of a hold in the copper, averaged over the bounce and corrected by a measured hold current. */
export function holdHeatW(model: CandidateModel, currentsA: readonly number[], windingK: number): number {
  let sum = 0;
  for (const currentA of currentsA) sum += copperHeatW(model, currentA, 0, windingK);
  return (model.holdCorrectionRatio * sum) / currentsA.length;
}

/** The heat one drive makes over a played loop, as a function of its winding temperature. */
export class HeatLoad {
  readonly gearHeatsW: Float64Array;
  private readonly holds = new Map<number, number[]>();

  constructor(
    private readonly model: CandidateModel,
    readonly samples: LoopSamples,
    bounceFraction: number,
  ) {
    this.gearHeatsW = new Float64Array(samples.count);
    for (let k = 0; k < samples.count; k++) {
      if (samples.kinds[k] === sampleKinds.hold && !model.unpoweredHold) {
        this.holds.set(k, bounceCurrentsA(model, samples.positions[k]!, bounceFraction));
      }
      this.gearHeatsW[k] = gearHeatW(
        model.drive.speedConstant,
        samples.speeds[k]!,
        samples.motorCurrentsA[k]!,
        samples.efforts[k]!,
      );
    }
  }

  /** Heat in the copper during sample `k` with the winding at a temperature. */
  copperW(k: number, windingK: number): number {
    const { samples, model } = this;
    const currentsA = this.holds.get(k);
    if (currentsA !== undefined) return holdHeatW(model, currentsA, windingK);
    if (samples.kinds[k] !== sampleKinds.move) return 0;
    return copperHeatW(model, samples.motorCurrentsA[k]!, samples.speeds[k]!, windingK);
  }

  /** Mean over the loop with the winding at one temperature throughout. */
  meanCopperW(windingK: number): number {
    let energyJ = 0;
    for (let k = 0; k < this.samples.count; k++) {
      energyJ += this.copperW(k, windingK) * this.samples.durationsS[k]!;
    }
    return energyJ / this.samples.totalS;
  }

  meanGearW(): number {
    let energyJ = 0;
    for (let k = 0; k < this.samples.count; k++) {
      energyJ += this.gearHeatsW[k]! * this.samples.durationsS[k]!;
    }
    return energyJ / this.samples.totalS;
  }
}
