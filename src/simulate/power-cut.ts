import { type Fall, type FallingMotor, fall } from '../physics/fall.js';
import { driveEffortYielding, speedRatio } from '../physics/linkage.js';
import { gravityEffortAt, staticEffort } from '../physics/load.js';
import type { CandidateModel } from './candidate-model.js';
import { samePlace } from './held-poses.js';
import type { PowerCutOutcome, StopName } from './outcome.js';

/** Way over which a landing tip gives (from experience: foam and fabric over a frame). */
export const landingGiveM = 0.005;

/** Least backward efficiency assumed of a drive while it is shaken. */
const leastShakenEfficiency = 0.05;

/** Places on the way to a stop at which a creeping feature is asked whether friction still slows it. */
const creepSteps = 24;

/** Steps of a fall in time that is printed. */
const printedSteps = 200;

/**
 * Effort that the unpowered drive's friction can hold back, motor friction through the gears. (M20)
 * @returns Infinity when it locks
 */
export function unpoweredHoldingEffort(model: CandidateModel, shaken: boolean): number {
  const { drive, backdrivesAtEffort, shakeRatio } = model;
  if (backdrivesAtEffort !== null) return backdrivesAtEffort;
  const motorEffort = drive.speedConstant * drive.noLoadCurrentA;
  const atRest =
    drive.backwardEfficiencyStatic <= 0
      ? Number.POSITIVE_INFINITY
      : motorEffort / drive.backwardEfficiencyStatic;
  if (!shaken || drive.backwardEfficiencyShaken <= 0) return atRest;
  // Shaking takes friction away, whatever shake factor a sheet may name.
  const shakenEfficiency = Math.max(leastShakenEfficiency, drive.backwardEfficiencyShaken);
  return Math.min(atRest, (shakeRatio * motorEffort) / shakenEfficiency);
}

/**
 * The stop to which the unpowered feature is pulled at a position: the lower one by its weight, the upper one by a
 * spring that is stronger or past the vertical.
 */
export const pulledTowards = (model: CandidateModel, position: number): StopName =>
  stopOf(staticEffort(model.load, position));

const stopOf = (pull: number): StopName => (pull < 0 ? 'upper' : 'lower');

/**
 * Effort of one drive that its friction has to hold back at a position, up or down; joint friction helps. (M20)
 *
 * Shaking is in the shake factor where friction is calculated. A measured `backdrives_at` knows nothing of it, so
 * there the bounce of the carrier comes on top of the load.
 * @returns 0 or less where the joint's friction is enough or a stop bears the feature
 */
function yieldingEffort(model: CandidateModel, position: number, shaken: boolean): number {
  const { load, coupling, stops, backdrivesAtEffort } = model;
  const pull = staticEffort(load, position);
  const isOnStop = Math.abs(position - stops[stopOf(pull)]) <= samePlace[load.isHinge ? 'hinge' : 'slide'];
  if (isOnStop) return 0;
  const bounce =
    shaken && backdrivesAtEffort !== null
      ? load.bounceFraction * Math.abs(gravityEffortAt(load, position))
      : 0;
  const effort = Math.abs(pull) + bounce - load.frictionEffort;
  if (effort <= 0) return 0;
  return driveEffortYielding(effort, Math.abs(speedRatio(coupling, position)), coupling);
}

/** Whether the feature stays at a position when the power goes, pulled down or up. (M20) */
export const staysUnpowered = (model: CandidateModel, position: number, shaken: boolean): boolean =>
  yieldingEffort(model, position, shaken) <= unpoweredHoldingEffort(model, shaken);

/** The unpowered motor as a falling feature feels it; a measured `backdrives_at` is the friction that brakes it. */
function fallingMotor({ drive, backdrivesAtEffort }: CandidateModel, shorted: boolean): FallingMotor {
  const backwardEfficiency = Math.max(leastShakenEfficiency, drive.backwardEfficiency);
  return {
    speedConstant: drive.speedConstant,
    brakingEffort: backdrivesAtEffort ?? (drive.speedConstant * drive.noLoadCurrentA) / backwardEfficiency,
    backwardEfficiency,
    resistanceOhm: drive.resistanceOhm,
    rotorInertia: drive.rotorInertia,
    shorted,
  };
}

/** What the feature does when its power goes. */
interface LetGo {
  stays: boolean;
  /** The hold that is told, and the stop that the feature is pulled to there. */
  fromPosition: number;
  towards: StopName;
  /** The fall; null where it stays, or gives way but comes to rest before the stop. */
  landing: Fall | null;
}

/**
 * Let go of a feature at each of the positions it is held at. (M20)
 *
 * Told is the hold from which it lands with most energy; without a landing the one farthest from its stop; and where
 * it stays at all of them, the one at which it is pulled most. On the way down a feature let go higher passes the
 * lower holds already moving, so the first landing from above is the hardest one; and so from below.
 * @param positions highest first, at least one
 * @param shaken whether its carrier shakes it
 * @param shorted whether the motor leads are joined, so that the motor brakes
 * @param stepCount of the fall
 */
function letGo(
  model: CandidateModel,
  positions: readonly number[],
  shaken: boolean,
  shorted: boolean,
  stepCount: number,
): LetGo {
  const gone = givesWay(model, positions, shaken, shorted, stepCount);
  if (gone !== null) return gone;
  const fromPosition = mostPulled(model, positions, shaken);
  return { stays: true, fromPosition, towards: pulledTowards(model, fromPosition), landing: null };
}

/** The same where it gives way; null where it stays at all of them, at no more cost than finding that out. */
export function givesWay(
  model: CandidateModel,
  positions: readonly number[],
  shaken: boolean,
  shorted: boolean,
  stepCount: number,
): LetGo | null {
  // What locks stays wherever it is held.
  if (unpoweredHoldingEffort(model, shaken) === Number.POSITIVE_INFINITY) return null;
  let told: LetGo | null = null;
  for (const towards of ['lower', 'upper'] as const) {
    for (let i = 0; i < positions.length; i++) {
      const fromPosition = positions[towards === 'lower' ? i : positions.length - 1 - i]!;
      if (pulledTowards(model, fromPosition) !== towards || staysUnpowered(model, fromPosition, shaken)) {
        continue;
      }
      const landing = fallTo(model, fromPosition, towards, shaken, shorted, stepCount);
      const isHarder = told === null || (landing?.stopSpeed ?? 0) > (told.landing?.stopSpeed ?? 0);
      if (isHarder) told = { stays: false, fromPosition, towards, landing };
      if (landing !== null) break;
    }
  }
  return told;
}

function mostPulled(model: CandidateModel, positions: readonly number[], shaken: boolean): number {
  let most = positions[0]!;
  for (const position of positions) {
    if (yieldingEffort(model, position, shaken) > yieldingEffort(model, most, shaken)) most = position;
  }
  return most;
}

/**
 * The fall of a feature that gives way at a position. Where friction lets go only because it is shaken, it creeps
 * first and falls from the place at which friction holds it no longer; the time then counts from there.
 */
function fallTo(
  model: CandidateModel,
  fromPosition: number,
  towards: StopName,
  shaken: boolean,
  shorted: boolean,
  stepCount: number,
): Fall | null {
  const { load, coupling, stops } = model;
  const motor = fallingMotor(model, shorted);
  const way = stops[towards] - fromPosition;
  for (let step = 0; step < creepSteps; step++) {
    const position = fromPosition + (way * step) / creepSteps;
    const creepsOn =
      step === 0 || (pulledTowards(model, position) === towards && !staysUnpowered(model, position, shaken));
    if (!creepsOn) return null;
    if (yieldingEffort(model, position, false) > motor.brakingEffort) {
      return fall(load, coupling, motor, position, stops[towards], stepCount);
    }
  }
  return null;
}

/**
 * Power cut at the holds: stays, falls to a stop, or gives way so slowly that it comes to rest before or lands with
 * nothing. (M20)
 *
 * A worn feature is always shaken, so there only what stays when shaken stays.
 * @param positions at which it is held, highest first
 * @param worn whether the carrier shakes it
 * @param shorted whether the motor leads are joined, so that the motor brakes
 */
export function powerCut(
  model: CandidateModel,
  positions: readonly number[],
  worn: boolean,
  shorted: boolean,
): PowerCutOutcome {
  const staysWhenShaken = positions.every((position) => staysUnpowered(model, position, true));
  const { stays, fromPosition, towards, landing } = letGo(model, positions, worn, shorted, printedSteps);
  const impactEnergyJ = stays ? null : landingEnergyJ(model, landing);
  return {
    stays,
    staysWhenShaken,
    fromPosition,
    towards,
    fallS: landing === null ? null : landing.fallS,
    tipSpeedMPerS: landing === null ? null : landing.stopSpeed * model.load.lengthM,
    largestTipSpeedMPerS: landing === null ? null : landing.largestSpeed * model.load.lengthM,
    impactEnergyJ,
    tipForceN: impactEnergyJ === null ? null : impactEnergyJ / landingGiveM,
  };
}

/** Energy of motion at the stop; what stays or only gives way has none. */
export const landingEnergyJ = ({ load }: CandidateModel, landing: Fall | null): number =>
  landing === null ? 0 : 0.5 * load.inertia * landing.stopSpeed ** 2;
