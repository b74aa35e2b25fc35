import type { DriveType } from '../drives/drive-type.js';
import type { CandidateModel } from './candidate-model.js';

/**
 * Current when all drives start from standstill at the full pack. (M16)
 *
 * Servos meet the full pack at power-on, switched drives at every start; a position driver that ramps has no
 * such moment.
 * @param leadOhm wire, switch and connector of the pack
 * @returns pack current in A; null when the drive ramps up
 */
export function startUpCurrentA(model: CandidateModel, type: DriveType, leadOhm: number): number | null {
  if (!model.switched && !type.startsAtPowerOn) return null;
  const { bus, drive, driveCount } = model;
  if (!bus.regulated) return (driveCount * bus.packFullV) / (drive.resistanceOhm + driveCount * leadOhm);
  const regulatorA = (driveCount * bus.nominalV) / drive.resistanceOhm;
  return (bus.nominalV * regulatorA) / (bus.regulatorEfficiency * bus.packNominalV);
}
