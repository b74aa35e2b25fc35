import type { DriveParameters } from '../drives/drive-parameters.js';
import type { Finding } from '../drives/finding.js';
import type { DriveSheet } from '../drives/sheet.js';
import { formatQuantity, formatValue } from '../quantity/format.js';
import { holdMotorCurrentA, measuredHold } from './hold.js';

/** A reading may exceed the most that the model allows by this factor before it is doubted (from experience). */
const doubtedRatio = 1.25;

/** What a measured hold current cannot mean, or seldom means, against the motor's own figures. (M12, M15) */
export function measuredHoldFindings(drive: DriveParameters, sheet: DriveSheet): Finding[] {
  if (sheet.holdCurrentA === null || sheet.holdEffort === null) return [];
  const effort = formatValue(sheet.holdEffort, drive.motion === 'rotary' ? 'N·m' : 'N');
  const current = formatQuantity(sheet.holdCurrentA, 'current');
  const finding = (
    severity: Finding['severity'],
    code: string,
    field: string,
    message: string,
  ): Finding[] => [{ code, severity, field, message }];
  const measured = measuredHold(drive, sheet);
  if (measured === null)
    return finding(
      'odd',
      'hold-measured-unloaded',
      'hold_effort',
      `At ${effort} the drive has nothing to hold, so hold_current says nothing of a load and is not used. Read it with a known mass on the drive.`,
    );
  if (measured.measuredA === 0) {
    const leastA = holdMotorCurrentA(drive, sheet.holdEffort, 0);
    return finding(
      leastA > 0 ? 'impossible' : 'odd',
      'hold-costs-nothing',
      'hold_current',
      `The hold current of ${current} is no more than the idle current: every hold then costs nothing, where the motor's figures ask for ${formatQuantity(measured.modelledA, 'current')} at ${effort}${leastA > 0 ? ', and for some current with all friction helping' : ''}. Was it powered, and was the load on the drive rather than on a stop?`,
    );
  }
  const mostA = holdMotorCurrentA(drive, sheet.holdEffort, 1);
  if (measured.measuredA <= doubtedRatio * mostA) return [];
  return finding(
    'odd',
    'hold-above-model',
    'hold_current',
    `The hold current of ${current} is more than the motor's figures allow at ${effort}: at most ${formatQuantity(mostA, 'current')} with all friction against it. Is a unit wrong, or the load?`,
  );
}
