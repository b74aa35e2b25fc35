import { fall } from '../physics/fall.js';
import { driveEffortYielding, speedRatio } from '../physics/linkage.js';
import { staticEffort } from '../physics/load.js';
import type { CandidateModel } from './candidate-model.js';
import type { PowerCutOutcome } from './outcome.js';

/** Way over which a landing tip gives (from experience: foam and fabric over a frame). */
export const landingGiveM = 0.005;

/** Least backward efficiency assumed of a drive while it is shaken. */
export const leastShakenEfficiency = 0.05;

/**
 * Effort that the unpowered drive's friction can hold back, motor friction through the gears. (M20)
 * @returns Infinity when it locks
 */
export function unpoweredHoldingEffort(model: CandidateModel, shaken: boolean): number {
  const { drive, backdrivesAtEffort, shakeRatio } = model;
  if (backdrivesAtEffort !== null) return backdrivesAtEffort;
  const motorEffort = drive.speedConstant * drive.noLoadCurrentA;
  if (!shaken) {
    return drive.backwardEfficiencyStatic <= 0
      ? Number.POSITIVE_INFINITY
      : motorEffort / drive.backwardEfficiencyStatic;
  }
  if (drive.backwardEfficiencyShaken <= 0) return Number.POSITIVE_INFINITY;
  return (shakeRatio * motorEffort) / Math.max(leastShakenEfficiency, drive.backwardEfficiencyShaken);
}

/** Whether the feature stays at a position when the power goes. (M20) */
export function staysUnpowered(model: CandidateModel, position: number, shaken: boolean): boolean {
  const effort = staticEffort(model.load, position) - model.load.frictionEffort;
  if (effort <= 0) return true;
  const ratio = Math.abs(speedRatio(model.coupling, position));
  return driveEffortYielding(effort, ratio, model.coupling) <= unpoweredHoldingEffort(model, shaken);
}

/**
 * Power cut at the highest hold: stays, or falls to the lower stop. (M20)
 *
 * A worn feature is always shaken, so there only what stays when shaken stays. Friction that gives way only to
 * shaking lets it creep rather than fall: then no time and no speed are given.
 * @param worn whether the carrier shakes it
 * @param shorted whether the motor leads are joined, so that the motor brakes
 */
export function powerCut(
  model: CandidateModel,
  highestHold: number,
  lowerStop: number,
  worn: boolean,
  shorted: boolean,
  stepCount = 200,
): PowerCutOutcome {
  const staysAtRest = staysUnpowered(model, highestHold, false);
  const staysWhenShaken = staysAtRest && staysUnpowered(model, highestHold, true);
  const stays = worn ? staysWhenShaken : staysAtRest;
  const nothing = {
    fallS: null,
    tipSpeedMPerS: null,
    largestTipSpeedMPerS: null,
    impactEnergyJ: null,
    tipForceN: null,
  };
  if (stays) return { stays, staysWhenShaken, ...nothing };
  const { drive, load, coupling } = model;
  const fallen = fall(
    load,
    coupling,
    {
      speedConstant: drive.speedConstant,
      noLoadCurrentA: drive.noLoadCurrentA,
      backwardEfficiency: Math.max(leastShakenEfficiency, drive.backwardEfficiency),
      resistanceOhm: drive.resistanceOhm,
      rotorInertia: drive.rotorInertia,
      shorted,
    },
    highestHold,
    lowerStop,
    stepCount,
  );
  if (fallen === null) return { stays, staysWhenShaken, ...nothing };
  const impactEnergyJ = 0.5 * load.inertia * fallen.stopSpeed ** 2;
  return {
    stays,
    staysWhenShaken,
    fallS: fallen.fallS,
    tipSpeedMPerS: fallen.stopSpeed * load.lengthM,
    largestTipSpeedMPerS: fallen.largestSpeed * load.lengthM,
    impactEnergyJ,
    tipForceN: impactEnergyJ / landingGiveM,
  };
}
