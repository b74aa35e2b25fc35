import { copperResistanceRatio, motorVoltageV } from '../physics/dc-motor.js';
import { driveEffortAtRest, speedRatio } from '../physics/linkage.js';
import { gravityEffortAt, springEffort } from '../physics/load.js';
import { pulseBlend, pulseMovingBusCurrentA } from '../physics/pulse-drive.js';
import { gearHeatW } from '../physics/thermal.js';
import type { CandidateModel } from './candidate-model.js';
import { holdMotorCurrentA } from './hold.js';
import { type LoopSamples, sampleKinds } from './loop-samples.js';

/** Points of one bounce over which the hold heat is averaged. */
const bouncePoints = 8;

/**
 * Heat in the copper of one drive at a current, a speed and a winding temperature. (M15, M19)
 *
 * What a generating motor cannot return is taken to be burnt in its own copper, the worst place for it.
 */
export function copperHeatW(
  model: CandidateModel,
  currentA: number,
  speed: number,
  windingK: number,
): number {
  const warm = copperResistanceRatio(windingK);
  const ohm = model.drive.resistanceOhm * warm;
  const backV = model.drive.speedConstant * speed;
  const voltageV = motorVoltageV(currentA, speed, ohm, model.drive.speedConstant);
  if (!model.drive.pulsed) return currentA * currentA * ohm;
  if (currentA < 0 && voltageV >= 0) return model.regenerates ? currentA * currentA * ohm : -backV * currentA;
  const busV = model.bus.nominalV;
  // Warm copper shortens L/R, so the pulses look slower by the same ratio.
  const blend = pulseBlend(Math.min(1, (Math.abs(currentA) * ohm) / busV), model.drive.pulseRatio * warm);
  return busV * pulseMovingBusCurrentA(currentA, voltageV, busV, blend) - backV * currentA;
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

/** Longest stretch over which the copper is taken at one temperature. */
const longestPieceS = 2;

/**
 * The heat one drive makes over a played loop, as a function of its winding temperature. Long samples are cut into
 * pieces, so that the copper of each follows its own temperature.
 */
export class HeatLoad {
  readonly count: number;
  readonly totalS: number;
  readonly durationsS: Float64Array;
  readonly gearHeatsW: Float64Array;
  /** Sample of the loop that a piece belongs to. */
  readonly sampleIndexes: Int32Array;
  private readonly holds = new Map<number, number[]>();

  constructor(
    private readonly model: CandidateModel,
    readonly samples: LoopSamples,
    bounceFraction: number,
  ) {
    const pieces = pieceCounts(samples);
    this.count = pieces.reduce((sum, count) => sum + count, 0);
    this.totalS = samples.totalS;
    this.durationsS = new Float64Array(this.count);
    this.gearHeatsW = new Float64Array(this.count);
    this.sampleIndexes = new Int32Array(this.count);
    let next = 0;
    for (let k = 0; k < samples.count; k++) {
      if (samples.kinds[k] === sampleKinds.hold && !model.unpoweredHold) {
        this.holds.set(k, bounceCurrentsA(model, samples.positions[k]!, bounceFraction));
      }
      const gearW = gearHeatW(
        model.drive.speedConstant,
        samples.speeds[k]!,
        samples.motorCurrentsA[k]!,
        samples.efforts[k]!,
      );
      for (let piece = 0; piece < pieces[k]!; piece++) {
        this.sampleIndexes[next] = k;
        this.durationsS[next] = samples.durationsS[k]! / pieces[k]!;
        this.gearHeatsW[next++] = gearW;
      }
    }
  }

  /** Heat in the copper during a piece with the winding at a temperature. */
  copperW(piece: number, windingK: number): number {
    return this.sampleCopperW(this.sampleIndexes[piece]!, windingK);
  }

  /** The same for sample `k` of the loop. */
  sampleCopperW(k: number, windingK: number): number {
    const { samples, model } = this;
    if (samples.kinds[k] === sampleKinds.move) {
      return copperHeatW(model, samples.motorCurrentsA[k]!, samples.speeds[k]!, windingK);
    }
    const currentsA = this.holds.get(k);
    return currentsA === undefined ? 0 : holdHeatW(model, currentsA, windingK);
  }

  /** Mean over the loop with the winding at one temperature throughout. */
  meanCopperW(windingK: number): number {
    const { samples } = this;
    let energyJ = 0;
    for (let k = 0; k < samples.count; k++)
      energyJ += this.sampleCopperW(k, windingK) * samples.durationsS[k]!;
    return energyJ / this.totalS;
  }

  meanGearW(): number {
    let energyJ = 0;
    for (let piece = 0; piece < this.count; piece++)
      energyJ += this.gearHeatsW[piece]! * this.durationsS[piece]!;
    return energyJ / this.totalS;
  }
}

function pieceCounts(samples: LoopSamples): number[] {
  return Array.from({ length: samples.count }, (_, k) =>
    Math.max(1, Math.ceil(samples.durationsS[k]! / longestPieceS)),
  );
}
