import { wormBackwardEfficiency, wormForwardEfficiency } from '../physics/worm.js';
import type { DriveType } from './drive-type.js';
import { lockingMeshBackward, statedLockingMeshBackward } from './locking-mesh.js';
import { wormGearmotorColumns } from './worm-gearmotor-columns.js';

/** Pressure angle of ordinary worm gearing when the sheet does not say: 20°. */
const usualPressureAngleRad = (20 * Math.PI) / 180;

/** Self-locking worm gearmotor: holds without power when the worm's friction beats its lead. */
export const wormGearmotor: DriveType = {
  kind: 'worm-gearmotor',
  label: 'worm gearmotor',
  motion: 'rotary',
  columns: wormGearmotorColumns,
  locksByCalculation: true,
  assumedVoltageRatio: 1.25,
  startsAtPowerOn: false,
  backward: lockingMeshBackward,
  backwardAsStated: statedLockingMeshBackward,
  geometry(sheet, typical) {
    if (sheet.leadAngleRad === null) return null;
    const leadAngleRad = sheet.leadAngleRad;
    const pressureAngleRad = sheet.pressureAngleRad ?? usualPressureAngleRad;
    const running = sheet.frictionRunningCoefficient ?? typical.frictionRunningCoefficient;
    const standing = sheet.frictionStaticCoefficient ?? typical.frictionStaticCoefficient;
    return {
      forward: wormForwardEfficiency(leadAngleRad, running, pressureAngleRad),
      running: wormBackwardEfficiency(leadAngleRad, running, pressureAngleRad),
      standing: wormBackwardEfficiency(leadAngleRad, standing, pressureAngleRad),
      shaken: wormBackwardEfficiency(leadAngleRad, sheet.shakeRatio * standing, pressureAngleRad),
      standingWithCollar: null,
    };
  },
  cautions: [
    'Self-locking is not a brake: it wears in, warms up and creeps when shaken. Where a fall can hurt, a stop, latch or tether must carry the feature alone.',
    'A push against a locked worm goes into its teeth and the mount. Plan a breakaway.',
  ],
  sources: ['shigley', 'mott', 'meriam-kraige-dynamics', 'hughes-drury'],
};
