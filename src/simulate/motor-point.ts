import { motorCurrentA, motorVoltageV } from '../physics/dc-motor.js';
import { pulseBlend } from '../physics/pulse-drive.js';
import type { CandidateModel } from './candidate-model.js';

/**
 * Motor current along the motion while the drive moves, rotor inertia included. (M11)
 * @param effort along the motion: positive when the drive pushes, negative when the load does
 * @param acceleration of the drive along the motion
 */
export function movingCurrentA(model: CandidateModel, effort: number, acceleration: number): number {
  const { drive } = model;
  return (
    motorCurrentA(
      effort,
      drive.noLoadCurrentA,
      drive.forwardEfficiency * drive.speedConstant,
      drive.speedConstant,
      drive.backwardEfficiency,
    ) +
    (drive.rotorInertia * acceleration) / drive.speedConstant
  );
}

/** Motor voltage at a current and a speed along the motion. (M11) */
export const movingVoltageV = ({ drive }: CandidateModel, currentA: number, speed: number): number =>
  motorVoltageV(currentA, speed, drive.resistanceOhm, drive.speedConstant);

/** What one drive takes from its bus: I = powerW/V + currentA. Reused between calls. */
export interface BusDraw {
  powerW: number;
  currentA: number;
}

/**
 * Draw of a motor at a current and voltage along the motion, blended between slow and fast pulses. (M11, M15)
 *
 * Motoring and plugging both draw; generating returns nothing unless the drive regenerates.
 * A switched drive has no pulses: the bus carries the motor's own current.
 */
export function busDraw(model: CandidateModel, currentA: number, voltageV: number, into: BusDraw): void {
  into.powerW = 0;
  into.currentA = 0;
  if (model.switched) {
    into.currentA = Math.max(0, currentA);
    return;
  }
  if (currentA < 0 && voltageV >= 0) {
    if (model.regenerates) into.powerW = currentA * voltageV;
    return;
  }
  const magnitudeA = Math.abs(currentA);
  const duty = Math.min(1, (magnitudeA * model.drive.resistanceOhm) / model.bus.nominalV);
  const blend = pulseBlend(duty, model.drive.pulseRatio);
  into.powerW = (1 - blend) * magnitudeA * Math.abs(voltageV);
  into.currentA = blend * magnitudeA;
}

/** Current of all drives together at their own bus, idle included. */
export function drivesCurrentA(model: CandidateModel, draw: BusDraw, idleA: number, busV: number): number {
  return model.driveCount * (draw.powerW / busV + draw.currentA + idleA);
}
