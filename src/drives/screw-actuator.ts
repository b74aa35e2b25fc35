import { screwBackwardEfficiency, screwForwardEfficiency, type Thread } from '../physics/power-screw.js';
import type { DriveType } from './drive-type.js';
import { lockingMeshBackward, statedLockingMeshBackward } from './locking-mesh.js';
import { screwActuatorColumns } from './screw-actuator-columns.js';

/** Half the thread angle of an ISO trapezoidal thread: 15°. */
const trapezoidalFlankAngleRad = (15 * Math.PI) / 180;

/** Collar friction when the sheet gives a collar but no coefficient. */
const usualCollarFriction = 0.12;

/** Screw actuator: a motor, a screw and a nut; holds without power when the thread locks. */
export const screwActuator: DriveType = {
  kind: 'screw-actuator',
  label: 'screw actuator',
  motion: 'linear',
  columns: screwActuatorColumns,
  locksByCalculation: true,
  assumedVoltageRatio: 1.25,
  startsAtPowerOn: false,
  backward: lockingMeshBackward,
  backwardAsStated: statedLockingMeshBackward,
  geometry(sheet, typical) {
    const { screwDiameterM: meanDiameterM, screwLeadM: leadM } = sheet;
    if (meanDiameterM === null || leadM === null) return null;
    const running = sheet.frictionRunningCoefficient ?? typical.frictionRunningCoefficient;
    const standing = sheet.frictionStaticCoefficient ?? typical.frictionStaticCoefficient;
    const thread = (frictionCoefficient: number): Thread => ({
      meanDiameterM,
      leadM,
      frictionCoefficient,
      flankAngleRad: sheet.flankAngleRad ?? trapezoidalFlankAngleRad,
    });
    const collar = {
      frictionCoefficient: sheet.collarFrictionCoefficient ?? usualCollarFriction,
      meanDiameterM: sheet.collarDiameterM ?? 0,
    };
    return {
      forward: screwForwardEfficiency({ ...thread(running), collar }),
      running: screwBackwardEfficiency(thread(running)),
      standing: screwBackwardEfficiency(thread(standing)),
      shaken: screwBackwardEfficiency(thread(sheet.shakeRatio * standing)),
      standingWithCollar:
        collar.meanDiameterM > 0 ? screwBackwardEfficiency({ ...thread(standing), collar }) : null,
    };
  },
  cautions: [
    'Self-locking is not a brake: it wears in, warms up and creeps when shaken. Where a fall can hurt, a stop, latch or tether must carry the feature alone.',
    'A screw actuator does not feel what it crushes. Fit end switches and keep fingers out of the linkage.',
  ],
  sources: ['shigley', 'iso-2904', 'meriam-kraige-dynamics', 'hughes-drury'],
};
