import { expRatio1, expRatio2, expRatio3 } from './integrate.js';
import { type CouplingParameters, speedRatio, speedRatioSlope } from './linkage.js';
import { type LoadParameters, staticEffort } from './load.js';

/** The unpowered motor as the falling feature feels it, per drive. */
export interface FallingMotor {
  /** V·s/rad or V·s/m. */
  speedConstant: number;
  /** Effort at its output with which friction brakes it, N·m or N: that of motor and gears, or as measured. */
  brakingEffort: number;
  /** Running, above 0; a drive that locks does not fall. */
  backwardEfficiency: number;
  resistanceOhm: number;
  /** At the drive's output, kg·m² or kg. */
  rotorInertia: number;
  /** Motor leads joined, so that the motor brakes. */
  shorted: boolean;
}

/** How a fall ends; speeds of the feature coordinate, magnitudes. */
export interface Fall {
  fallS: number;
  stopSpeed: number;
  largestSpeed: number;
}

/** All that stays the same during one fall. */
interface Falling {
  load: LoadParameters;
  coupling: CouplingParameters;
  motor: FallingMotor;
  fromPosition: number;
  /** Towards the lower stop −1, towards the upper one +1. */
  direction: 1 | -1;
}

/** Moving mass of feature and rotors in the feature coordinate. */
function movingInertia({ load, coupling, motor }: Falling, ratio: number): number {
  return load.inertia + (coupling.driveCount * ratio * ratio * motor.rotorInertia) / motor.backwardEfficiency;
}

/** Position after a fall of this far. */
const positionAfter = ({ fromPosition, direction }: Falling, fallen: number): number =>
  fromPosition + direction * fallen;

/** Braking of shorted motors that grows with speed, per moving mass, 1/s; 0 with open leads. */
function brakingRatePerS(falling: Falling, fallen: number): number {
  const { coupling, motor } = falling;
  if (!motor.shorted) return 0;
  const ratio = speedRatio(coupling, positionAfter(falling, fallen));
  const perSpeed =
    (coupling.driveCount * ratio * ratio * motor.speedConstant * motor.speedConstant) /
    (motor.resistanceOhm * motor.backwardEfficiency * coupling.efficiency);
  return perSpeed / movingInertia(falling, ratio);
}

/** Acceleration towards the stop after a fall of this far, at a speed towards it (M20). */
function fallingAcceleration(falling: Falling, fallen: number, speed: number): number {
  const { load, coupling, motor, direction } = falling;
  const position = positionAfter(falling, fallen);
  const ratio = Math.abs(speedRatio(coupling, position));
  const shortedA = motor.shorted ? (motor.speedConstant * ratio * speed) / motor.resistanceOhm : 0;
  const driveEffort = motor.brakingEffort + (motor.speedConstant * shortedA) / motor.backwardEfficiency;
  const braking =
    load.frictionEffort +
    load.dragCoefficient * speed * speed +
    (coupling.driveCount * ratio * driveEffort) / coupling.efficiency;
  // Along a strut the rotors' share of the inertia changes, and their energy with it: n·u·u′·J·ẋ²/η_b.
  const changing =
    -direction *
    coupling.driveCount *
    speedRatio(coupling, position) *
    speedRatioSlope(coupling, position) *
    ((motor.rotorInertia * speed * speed) / motor.backwardEfficiency);
  const pulling = -direction * staticEffort(load, position);
  return (pulling - braking + changing) / movingInertia(falling, ratio);
}

/**
 * The fall of a feature from rest to a stop after the power is cut: to the lower one under its weight, or to the
 * upper one where a spring throws it up or it falls over backward.
 * null when it never starts, comes to rest on the way, or is at the stop already.
 *
 * Fourth-order exponential Runge–Kutta in time. With open leads it is the classical method; with shorted
 * leads the braking is solved exactly, so that a slow worm drive needs no more steps than a free fall.
 * The rotors follow the ratio at each position, and along a strut its change too.
 * @param load the feature
 * @param coupling how drive and feature are joined
 * @param motor the unpowered motor
 * @param fromPosition where it is let go, rad or m
 * @param stopPosition where it lands, below or above that
 * @param stepCount 200 for print; in an ensemble 12 keep five digits of a free fall, 24 three of a braked one
 * @source meriam-kraige-dynamics, rotation about a fixed axis (M20)
 */
export function fall(
  load: LoadParameters,
  coupling: CouplingParameters,
  motor: FallingMotor,
  fromPosition: number,
  stopPosition: number,
  stepCount = 200,
): Fall | null {
  const travel = Math.abs(stopPosition - fromPosition);
  if (!(travel > 0) || !(motor.backwardEfficiency > 0)) return null;
  const direction = stopPosition < fromPosition ? -1 : 1;
  const falling: Falling = { load, coupling, motor, fromPosition, direction };
  const state = new Float64Array(2);
  let timeS = 0;
  let largestSpeed = 0;
  for (let step = 0; step < 8 * stepCount; step++) {
    // A free fall gathers speed: shares of 1, 3, 5, … parts are equal times. A braked one keeps its speed.
    const parts = motor.shorted ? stepCount : 2 * Math.min(step, stepCount - 1) + 1;
    const share = (travel * parts) / (stepCount * stepCount);
    const left = travel - state[0]!;
    const last = left <= 1.5 * share;
    timeS += advance(falling, state, last ? left : share, last);
    const speed = state[1]!;
    if (!(speed > 0)) return null;
    if (speed > largestSpeed) largestSpeed = speed;
    if (last) return { fallS: timeS, stopSpeed: speed, largestSpeed };
  }
  return null;
}

/**
 * One step that covers about a distance, or exactly when it is the last; changes the state in place.
 * @param state how far it has fallen, and its speed; speed 0 or less afterwards: it came to rest
 * @returns duration of the step, s
 */
function advance(falling: Falling, state: Float64Array, distance: number, exactly: boolean): number {
  const fallen = state[0]!;
  const speed = state[1]!;
  const acceleration = fallingAcceleration(falling, fallen, speed);
  if (speed <= 0 && !(acceleration > 0)) return 0;
  const ratePerS = brakingRatePerS(falling, fallen);
  let stepS = timeToTravel(distance, speed, acceleration);
  for (let pass = 0; pass < 16; pass++) {
    state[0] = fallen;
    state[1] = speed;
    exponentialStep(falling, state, acceleration, ratePerS, stepS);
    const missing = fallen + distance - state[0];
    if (missing < -distance) {
      // From a shaky balance the acceleration grows within the step: shorten it.
      stepS /= 2;
      continue;
    }
    if (!exactly || !(state[1] > 0) || Math.abs(missing) <= 1e-12 * (fallen + distance)) break;
    stepS += missing / state[1];
  }
  return stepS;
}

/**
 * One step of the exponential method; a speed-proportional part of the braking is taken out and solved
 * exactly. Changes the state in place.
 * @source cox-matthews, equations 26–29; hairer-norsett-wanner, section II.1, for rate 0
 */
function exponentialStep(
  falling: Falling,
  state: Float64Array,
  acceleration: number,
  ratePerS: number,
  stepS: number,
): void {
  const x = state[0]!;
  const v = state[1]!;
  const half = Math.exp((-ratePerS * stepS) / 2);
  const kick = (stepS / 2) * expRatio1((-ratePerS * stepS) / 2);
  const n0 = acceleration + ratePerS * v;
  const v1 = v * half + kick * n0;
  const n1 = fallingAcceleration(falling, x + (stepS / 2) * v, v1) + ratePerS * v1;
  const v2 = v * half + kick * n1;
  const n2 = fallingAcceleration(falling, x + (stepS / 2) * v1, v2) + ratePerS * v2;
  const v3 = v1 * half + kick * (2 * n2 - n0);
  const n3 = fallingAcceleration(falling, x + stepS * v2, v3) + ratePerS * v3;
  state[0] = x + (stepS / 6) * (v + 2 * v1 + 2 * v2 + v3);
  if (ratePerS === 0) {
    state[1] = v + (stepS / 6) * (n0 + 2 * n1 + 2 * n2 + n3);
    return;
  }
  const phi1 = expRatio1(-ratePerS * stepS);
  const phi2 = expRatio2(-ratePerS * stepS);
  const phi3 = expRatio3(-ratePerS * stepS);
  const first = phi1 - 3 * phi2 + 4 * phi3;
  const middle = 2 * phi2 - 4 * phi3;
  const end = 4 * phi3 - phi2;
  state[1] = v * half * half + stepS * (first * n0 + middle * (n1 + n2) + end * n3);
}

/** Time to cover a distance at a speed and a constant acceleration; until rest when it is not reached. */
function timeToTravel(distance: number, speed: number, acceleration: number): number {
  const squared = speed * speed + 2 * acceleration * distance;
  if (squared < 0) return speed / -acceleration;
  return (2 * distance) / (speed + Math.sqrt(squared));
}
