import type { DriveType } from './drive-type.js';
import { positionServo } from './position-servo.js';
import { screwActuator } from './screw-actuator.js';
import type { DriveKind } from './sheet.js';
import { wormGearmotor } from './worm-gearmotor.js';

/** Every drive type the tool knows. A new kind adds its file and one line here. */
export const driveTypes: Record<DriveKind, DriveType> = {
  'position-servo': positionServo,
  'worm-gearmotor': wormGearmotor,
  'screw-actuator': screwActuator,
};
