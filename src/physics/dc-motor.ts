import { copperReferenceK, copperTemperatureCoefficient } from './constants.js';

/**
 * A brushed permanent-magnet motor with its gearing, seen from the output.
 * Speed constant in V·s/rad (rotary) or V·s/m (linear).
 */
export interface MotorConstants {
  resistanceOhm: number;
  speedConstant: number;
  noLoadCurrentA: number;
  stallCurrentA: number;
  /** Of the gearing while the motor drives; over 1 when the figures break energy conservation. */
  forwardEfficiency: number;
}

/**
 * Motor constants from the no-load and the stall point of one voltage.
 * @param voltageV voltage of both points
 * @param noLoadSpeed rad/s or m/s
 * @param noLoadCurrentA below the stall current
 * @param stallCurrentA above 0
 * @param stallEffort N·m or N
 * @returns constants as the sheet implies them, with an efficiency over 1 where it implies that
 * @source hughes-drury, chapter 3, steady state of a d.c. motor (M5)
 */
export function motorFromStall(
  voltageV: number,
  noLoadSpeed: number,
  noLoadCurrentA: number,
  stallCurrentA: number,
  stallEffort: number,
): MotorConstants {
  const resistanceOhm = voltageV / stallCurrentA;
  const speedConstant = (voltageV - noLoadCurrentA * resistanceOhm) / noLoadSpeed;
  const forwardEfficiency = stallEffort / (speedConstant * (stallCurrentA - noLoadCurrentA));
  return { resistanceOhm, speedConstant, noLoadCurrentA, stallCurrentA, forwardEfficiency };
}

/**
 * Motor constants from the no-load and the rated point of one voltage.
 * Stall is where the line through both meets speed 0.
 * @param voltageV voltage of both points
 * @param noLoadSpeed rad/s or m/s, above the rated speed
 * @param noLoadCurrentA below the rated current
 * @param ratedSpeed rad/s or m/s
 * @param ratedCurrentA above the no-load current
 * @param ratedEffort N·m or N
 * @returns constants as the sheet implies them
 * @source hughes-drury, chapter 3, steady state of a d.c. motor (M6)
 */
export function motorFromRatedPoint(
  voltageV: number,
  noLoadSpeed: number,
  noLoadCurrentA: number,
  ratedSpeed: number,
  ratedCurrentA: number,
  ratedEffort: number,
): MotorConstants {
  const resistanceOhm =
    (voltageV * (noLoadSpeed - ratedSpeed)) / (ratedCurrentA * noLoadSpeed - noLoadCurrentA * ratedSpeed);
  const speedConstant = (voltageV - noLoadCurrentA * resistanceOhm) / noLoadSpeed;
  return {
    resistanceOhm,
    speedConstant,
    noLoadCurrentA,
    stallCurrentA: voltageV / resistanceOhm,
    forwardEfficiency: ratedEffort / (speedConstant * (ratedCurrentA - noLoadCurrentA)),
  };
}

/**
 * Stall current that gives a drive of known stall effort a typical efficiency.
 * @param stallEffort N·m or N
 * @param noLoadSpeed rad/s or m/s
 * @param typicalEfficiency of the drive type, 0…1
 * @param voltageV voltage of the figures
 * @param noLoadRatio no-load over stall current, below 1
 * @returns A
 * @source hughes-drury, chapter 3, solved for the stall current (M5)
 */
export function missingStallCurrentA(
  stallEffort: number,
  noLoadSpeed: number,
  typicalEfficiency: number,
  voltageV: number,
  noLoadRatio: number,
): number {
  return (stallEffort * noLoadSpeed) / (typicalEfficiency * voltageV * (1 - noLoadRatio) ** 2);
}

/**
 * Effort at speed 0 and rated voltage: the line of the motor at its stall current.
 * @param motor constants
 * @returns N·m or N
 * @source hughes-drury, chapter 3 (M5)
 */
export function stallEffortOf(motor: MotorConstants): number {
  return motor.forwardEfficiency * motor.speedConstant * (motor.stallCurrentA - motor.noLoadCurrentA);
}

/**
 * Motor current in the direction of motion, without the rotor's inertia.
 * An effort that pushes the drive along is negative: the gearing passes on its backward efficiency only,
 * and a drive that locks (negative efficiency) still has to be driven.
 * @param effortAlongMotion N·m or N, positive when the drive pushes
 * @param noLoadCurrentA friction of motor and gearing as a current
 * @param forwardTorqueConstant forward efficiency × speed constant, N·m/A or N/A
 * @param speedConstant V·s/rad or V·s/m
 * @param backwardEfficiency running, at most 1, negative when it locks
 * @returns A, negative when the motor generates or is driven against its motion
 * @source hughes-drury, chapter 3, with the losses of the gearing (M11)
 */
export function motorCurrentA(
  effortAlongMotion: number,
  noLoadCurrentA: number,
  forwardTorqueConstant: number,
  speedConstant: number,
  backwardEfficiency: number,
): number {
  return effortAlongMotion >= 0
    ? noLoadCurrentA + effortAlongMotion / forwardTorqueConstant
    : noLoadCurrentA + (backwardEfficiency * effortAlongMotion) / speedConstant;
}

/**
 * Voltage across the motor; current and speed in the same direction.
 * @param currentA motor current
 * @param speed of the output, rad/s or m/s
 * @param resistanceOhm of the winding
 * @param speedConstant V·s/rad or V·s/m
 * @returns V
 * @source hughes-drury, chapter 3 (M11)
 */
export function motorVoltageV(
  currentA: number,
  speed: number,
  resistanceOhm: number,
  speedConstant: number,
): number {
  return currentA * resistanceOhm + speedConstant * speed;
}

/**
 * Speed of the output at a voltage and a current; negative when the load wins.
 * @param voltageV across the motor
 * @param currentA motor current
 * @param resistanceOhm of the winding
 * @param speedConstant V·s/rad or V·s/m
 * @returns rad/s or m/s
 * @source hughes-drury, chapter 3 (M11)
 */
export function motorSpeed(
  voltageV: number,
  currentA: number,
  resistanceOhm: number,
  speedConstant: number,
): number {
  return (voltageV - currentA * resistanceOhm) / speedConstant;
}

/**
 * Inertia of the rotor as it appears at the output, before the losses of the gearing.
 * @param mechanicalTimeConstantS of the motor
 * @param speedConstant V·s/rad or V·s/m
 * @param resistanceOhm of the winding
 * @returns kg·m² or kg
 * @source hughes-drury, chapter 3, mechanical time constant (M11)
 */
export function rotorInertia(
  mechanicalTimeConstantS: number,
  speedConstant: number,
  resistanceOhm: number,
): number {
  return (mechanicalTimeConstantS * speedConstant * speedConstant) / resistanceOhm;
}

/**
 * Motor current that holds an effort at rest with power on.
 * Friction leaves a band: at its lower end it helps to hold, at its upper end the drive works against it.
 * Without any effort the upper end is the no-load current; a pose in balance has nothing to work against, so whoever
 * asks about poses takes none there.
 * @param effortMagnitude N·m or N, at least 0
 * @param noLoadCurrentA friction of motor and gearing as a current
 * @param forwardTorqueConstant forward efficiency × speed constant
 * @param speedConstant V·s/rad or V·s/m
 * @param staticBackwardEfficiency a negative one counts as 0: the drive locks
 * @param frictionFraction place in the band, 0…1
 * @returns A; at no effort the fraction of the no-load current
 * @source hughes-drury, chapter 3, with the friction of the gearing at rest (M12)
 */
export function holdCurrentA(
  effortMagnitude: number,
  noLoadCurrentA: number,
  forwardTorqueConstant: number,
  speedConstant: number,
  staticBackwardEfficiency: number,
  frictionFraction: number,
): number {
  const backward = Math.max(0, staticBackwardEfficiency);
  const lowestA = Math.max(0, (backward * effortMagnitude) / speedConstant - noLoadCurrentA);
  const highestA = effortMagnitude / forwardTorqueConstant + noLoadCurrentA;
  return lowestA + frictionFraction * (highestA - lowestA);
}

/**
 * Resistance of a copper winding over its resistance at 20 °C.
 * @param temperatureK of the winding
 * @returns 1 at 20 °C
 * @source iec-60028, temperature coefficient, from memory (M13)
 */
export function copperResistanceRatio(temperatureK: number): number {
  return 1 + copperTemperatureCoefficient * (temperatureK - copperReferenceK);
}
