import { lowerTorqueNm, screwBackwardEfficiency, screwForwardEfficiency } from '../physics/power-screw.js';
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
    if (sheet.screwDiameterM === null || sheet.screwLeadM === null) return null;
    const diameterM = sheet.screwDiameterM;
    const leadM = sheet.screwLeadM;
    const flankRad = sheet.flankAngleRad ?? trapezoidalFlankAngleRad;
    const running = sheet.frictionRunningCoefficient ?? typical.frictionRunningCoefficient;
    const standing = sheet.frictionStaticCoefficient ?? typical.frictionStaticCoefficient;
    const collarDiameterM = sheet.collarDiameterM ?? 0;
    const collarFriction = sheet.collarFrictionCoefficient ?? usualCollarFriction;
    const withCollar = lowerTorqueNm(
      1,
      diameterM,
      leadM,
      standing,
      flankRad,
      collarFriction,
      collarDiameterM,
    );
    return {
      forward: screwForwardEfficiency(diameterM, leadM, running, flankRad, collarFriction, collarDiameterM),
      running: screwBackwardEfficiency(diameterM, leadM, running, flankRad),
      standing: screwBackwardEfficiency(diameterM, leadM, standing, flankRad),
      shaken: screwBackwardEfficiency(diameterM, leadM, sheet.shakeRatio * standing, flankRad),
      standingWithCollar: collarDiameterM > 0 ? (-2 * Math.PI * withCollar) / leadM : null,
    };
  },
  cautions: [
    'Self-locking is not a brake: it wears in, warms up and creeps when shaken. Where a fall can hurt, a stop, latch or tether must carry the feature alone.',
    'A screw actuator does not feel what it crushes. Fit end switches and keep fingers out of the linkage.',
  ],
  sources: ['shigley', 'iso-2904', 'meriam-kraige-dynamics', 'hughes-drury'],
};
