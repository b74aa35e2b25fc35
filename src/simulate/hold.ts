import type { DriveParameters } from '../drives/drive-parameters.js';
import type { DriveSheet } from '../drives/sheet.js';
import { holdCurrentA } from '../physics/dc-motor.js';
import { driveEffortAtRest, speedRatio } from '../physics/linkage.js';
import { gravityEffortAt, staticEffort } from '../physics/load.js';
import { pulseHoldBusCurrentA } from '../physics/pulse-drive.js';
import type { Show } from '../study/show.js';
import type { CandidateModel } from './candidate-model.js';
import type { BusDraw } from './motor-point.js';
import { busDraw } from './motor-point.js';
import type { LockingClass } from './outcome.js';

/** Effort one drive must give to hold a position, signed as the drive sees it. (M3) */
export function holdEffortAt(model: CandidateModel, position: number): number {
  return driveEffortAtRest(
    staticEffort(model.load, position),
    speedRatio(model.coupling, position),
    model.coupling,
  );
}

/** A hold effort below this share of the stall effort is balance, not load. */
const balancedFraction = 1e-6;

/** Whether an effort is none: there is nothing for friction to work against. */
export const isBalanced = (drive: DriveParameters, effort: number): boolean =>
  Math.abs(effort) < balancedFraction * drive.stallEffort;

/**
 * Motor current while holding an effort, by the share of friction the drive works against; a balanced feature needs
 * none. (M12)
 */
export function holdMotorCurrentA(drive: DriveParameters, effort: number, frictionFraction: number): number {
  if (isBalanced(drive, effort)) return 0;
  return holdCurrentA(
    Math.abs(effort),
    drive.noLoadCurrentA,
    drive.forwardEfficiency * drive.speedConstant,
    drive.speedConstant,
    drive.backwardEfficiencyStatic,
    frictionFraction,
  );
}

/** Draw of one drive on its bus while its motor holds with a current, idle left out, whatever was measured. */
export function modelledHoldDraw(model: CandidateModel, motorA: number, into: BusDraw): void {
  busDraw(model, motorA, motorA * model.drive.resistanceOhm, into);
}

/** Draw of one drive on its bus at a powered hold, idle current left out, corrected by a measurement if any. */
export function holdDraw(model: CandidateModel, effort: number, into: BusDraw): number {
  const motorA = holdMotorCurrentA(model.drive, effort, model.drive.holdFrictionFraction);
  modelledHoldDraw(model, motorA, into);
  into.powerW *= model.holdCorrectionRatio;
  into.currentA *= model.holdCorrectionRatio;
  return motorA;
}

/** Pack current of one drive at the measured hold, at rated voltage, idle left out, as measured and as modelled. */
export interface MeasuredHold {
  /** At least 0. */
  measuredA: number;
  /** Above 0. */
  modelledA: number;
}

/**
 * What a sheet says of a measured hold. (M15)
 * @returns null without a measurement, and for one at an effort that asks for no current: nothing can be scaled by it
 */
export function measuredHold(drive: DriveParameters, sheet: DriveSheet): MeasuredHold | null {
  if (sheet.holdCurrentA === null || sheet.holdEffort === null) return null;
  const motorA = holdMotorCurrentA(drive, sheet.holdEffort, drive.holdFrictionFraction);
  const { resistanceOhm, ratedVoltageV, pulseRatio, pulsed } = drive;
  const modelledA = pulsed ? pulseHoldBusCurrentA(motorA, resistanceOhm, ratedVoltageV, pulseRatio) : motorA;
  if (!(modelledA > 0)) return null;
  return { measuredA: Math.max(0, sheet.holdCurrentA - sheet.idleCurrentA), modelledA };
}

/**
 * Measured over modelled pack current of one drive at a hold, at rated voltage and the same effort. (M15)
 *
 * It replaces what is guessed about friction and pulse frequency, so every hold is multiplied by it.
 * @returns 1 when the sheet carries no measurement of a loaded hold
 */
export function holdCorrectionRatio(drive: DriveParameters, sheet: DriveSheet): number {
  const hold = measuredHold(drive, sheet);
  return hold === null ? 1 : hold.measuredA / hold.modelledA;
}

/** Largest efforts of one drive over a number of holds, magnitudes. */
export interface LargestHold {
  stillEffort: number;
  /** With the bounce of the carrier on the weight of the feature; a spring does not bounce. */
  shakenEffort: number;
}

/** No hold at all. */
export const noHold = (): LargestHold => ({ stillEffort: 0, shakenEffort: 0 });

/**
 * Take one more hold into the largest.
 * @param into changed in place
 * @param stillEffort of the feature at the hold, gravity less spring
 * @param gravityEffort of the feature there
 * @param ratio u at the hold
 */
export function takeHold(
  into: LargestHold,
  { load, coupling }: Pick<CandidateModel, 'load' | 'coupling'>,
  stillEffort: number,
  gravityEffort: number,
  ratio: number,
): void {
  const still = Math.abs(stillEffort);
  const shaken = still + load.bounceFraction * Math.abs(gravityEffort);
  into.stillEffort = Math.max(into.stillEffort, Math.abs(driveEffortAtRest(still, ratio, coupling)));
  into.shakenEffort = Math.max(into.shakenEffort, Math.abs(driveEffortAtRest(shaken, ratio, coupling)));
}

/** Largest efforts of one drive over the holds of the cue list. */
export function largestHold(model: Pick<CandidateModel, 'load' | 'coupling'>, show: Show): LargestHold {
  const { load, coupling } = model;
  const largest = noHold();
  for (const { action, fromPosition: position } of [...show.leadIn, ...show.loop]) {
    if (action !== 'hold') continue;
    const still = staticEffort(load, position);
    takeHold(largest, model, still, gravityEffortAt(load, position), speedRatio(coupling, position));
  }
  return largest;
}

/**
 * Whether the drive holds without power, by static friction; a measured `backdrives_at` decides over it. (M10)
 * @param locksByCalculation false for spur trains, which are never called locking without a measurement
 */
export function lockingClass(
  drive: DriveParameters,
  locksByCalculation: boolean,
  backdrivesAtEffort: number | null,
  largest: LargestHold,
): LockingClass {
  if (backdrivesAtEffort !== null) {
    if (backdrivesAtEffort > largest.shakenEffort) return 'holds-when-shaken';
    return backdrivesAtEffort > largest.stillEffort ? 'holds-at-rest' : 'does-not-hold';
  }
  if (!locksByCalculation || drive.backwardEfficiencyStatic > 0) return 'does-not-hold';
  return drive.backwardEfficiencyShaken <= 0 ? 'holds-when-shaken' : 'holds-at-rest';
}

/** Whether a hold without power is honoured: it must lock, and when worn it must lock while shaken. (M12) */
export const unpoweredHoldHonoured = (locking: LockingClass, worn: boolean): boolean =>
  locking === 'holds-when-shaken' || (locking === 'holds-at-rest' && !worn);
