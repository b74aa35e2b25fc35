import { trainBackward } from '../physics/gear-train.js';
import { power } from '../quantity/power.js';
import type { DriveType } from './drive-type.js';
import { positionServoColumns } from './position-servo-columns.js';

/** Meshes of a hobby servo's spur train when the sheet does not say. */
export const usualMeshCount = 4;

/** Position-hold servo: a spur gearmotor with its own position loop, powered as long as it holds. */
export const positionServo: DriveType = {
  kind: 'position-servo',
  label: 'position-hold servo',
  motion: 'rotary',
  columns: positionServoColumns,
  locksByCalculation: false,
  assumedVoltageRatio: 1.15,
  startsAtPowerOn: true,
  backward(forwardEfficiency, sheet) {
    const meshCount = sheet.meshCount ?? usualMeshCount;
    const backward = trainBackward(power(forwardEfficiency, 1 / meshCount), meshCount);
    return { running: backward, standing: backward, shaken: backward };
  },
  backwardAsStated: (running) => ({ running, standing: running, shaken: running }),
  geometry: () => null,
  cautions: [
    'It holds only while it is powered: a flat pack, a loose plug or a tripped protection board lets the feature go.',
    'At power-on it may run to its commanded position at full speed. Keep hands and faces clear.',
  ],
  sources: ['hughes-drury', 'meriam-kraige-dynamics', 'mohan'],
};
