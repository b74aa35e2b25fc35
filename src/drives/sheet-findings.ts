import { motorFromRatedPoint, stallEffortOf } from '../physics/dc-motor.js';
import { formatValue } from '../quantity/format.js';
import { type DriveParameters, stallCurrentForA, uncrossed } from './drive-parameters.js';
import type { DriveType } from './drive-type.js';
import type { Finding } from './finding.js';
import { figuresAtVoltage } from './rated-figures.js';
import type { DriveSheet, Motion, RatedFigures, TypicalFigures } from './sheet.js';

/** Figures of one sheet that differ by more than this do not belong together. */
const largestDifference = { ratedPoint: 0.15, geometry: 0.25, statedEfficiency: 0.25 };

const effortColumn = (motion: Motion): string => (motion === 'rotary' ? 'stall_torque' : 'stall_force');
const effortUnit = (motion: Motion): 'kg·cm' | 'N' => (motion === 'rotary' ? 'kg·cm' : 'N');
const percent = (fraction: number): string => `${Math.round(fraction * 100)} %`;

/** What a sheet's figures cannot mean, or seldom mean, with the figure that would make them agree. (M5–M9) */
export function sheetFindings(
  type: DriveType,
  sheet: DriveSheet,
  typical: TypicalFigures,
  drive: DriveParameters,
  busVoltageV: number,
): Finding[] {
  const figures = figuresAtVoltage(sheet, busVoltageV);
  return [
    ...nearlyCrossedFindings(type, figures),
    ...efficiencyFindings(type, sheet, typical, drive),
    ...statedEfficiencyFindings(type, sheet, drive),
    ...ratedPointFindings(type, figures, drive),
    ...geometryFindings(type, sheet, typical, drive),
    ...unusedFindings(type, sheet),
  ];
}

/** Figures that leave next to nothing between running free and running loaded: what they are taken for instead. */
function nearlyCrossedFindings(type: DriveType, figures: RatedFigures): Finding[] {
  const taken = uncrossed(figures);
  const findings: Finding[] = [];
  const add = (field: string, listed: string, used: string, loaded: string) =>
    findings.push({
      code: 'nearly-crossed',
      severity: 'odd',
      field,
      message:
        `${field} is ${listed}, nearly or fully that of ${loaded}: such figures say nothing about the motor. ` +
        `It is computed with ${used}. Measure both again at the same voltage.`,
    });
  if (taken.noLoadCurrentA !== figures.noLoadCurrentA) {
    const shown = [figures, taken].map(({ noLoadCurrentA }) => formatValue(noLoadCurrentA!, 'A'));
    add('no_load_current', shown[0]!, shown[1]!, 'the loaded drive');
  }
  if (taken.ratedSpeed !== figures.ratedSpeed) {
    const unit = type.motion === 'rotary' ? 'rpm' : 'mm/s';
    const shown = [figures, taken].map(({ ratedSpeed }) => formatValue(ratedSpeed!, unit));
    add('rated_speed', shown[0]!, shown[1]!, 'the unloaded drive');
  }
  return findings;
}

/** Stall current that would give an efficiency with the sheet's stall power and no-load current. */
const consistentStallCurrentA = (drive: DriveParameters, efficiency: number): number =>
  stallCurrentForA(
    drive.listedStallEffort * drive.noLoadSpeed,
    drive.noLoadCurrentA,
    efficiency,
    drive.ratedVoltageV,
  );

function efficiencyFindings(
  type: DriveType,
  sheet: DriveSheet,
  typical: TypicalFigures,
  drive: DriveParameters,
): Finding[] {
  const implied = drive.impliedEfficiency;
  const field = effortColumn(type.motion);
  const ceiling = typical.forwardEfficiencyCeiling;
  const floor = typical.forwardEfficiencyFloor;
  const unit = effortUnit(type.motion);
  if (!Number.isFinite(implied)) return [];
  if (implied > ceiling) {
    const possible = formatValue((drive.listedStallEffort * ceiling) / implied, unit);
    const needed = formatValue(consistentStallCurrentA(drive, ceiling), 'A');
    const listed = formatValue(drive.listedStallEffort, unit);
    const beyond = implied > 1;
    return [
      {
        code: beyond ? 'more-out-than-in' : 'efficiency-above-ceiling',
        severity: beyond ? 'impossible' : 'odd',
        field,
        message:
          `The figures imply ${percent(implied)} gear efficiency` +
          `${beyond ? ', more power out than in' : `, above the ${percent(ceiling)} such a drive reaches`}. ` +
          `At ${percent(ceiling)} the stall figure would be ${possible} instead of ${listed}, ` +
          `or the stall current ${needed}. ` +
          (sheet.gearEfficiency === null
            ? 'The lower effort is used.'
            : 'The stated gear_efficiency is used.'),
      },
    ];
  }
  if (implied < floor) {
    const usual = typical.forwardEfficiency;
    return [
      {
        code: 'efficiency-below-floor',
        severity: 'odd',
        field,
        message:
          `The figures imply only ${percent(implied)} gear efficiency, under the ${percent(floor)} usual for a ` +
          `${type.label}. At a usual ${percent(usual)} the stall figure would be ` +
          `${formatValue((drive.listedStallEffort * usual) / implied, unit)}, or the stall current ` +
          `${formatValue(consistentStallCurrentA(drive, usual), 'A')}. Is a unit or the voltage wrong?`,
      },
    ];
  }
  return [];
}

/** A gear efficiency that somebody stated, beside the one that the listing comes to. (M5) */
function statedEfficiencyFindings(type: DriveType, sheet: DriveSheet, drive: DriveParameters): Finding[] {
  const stated = sheet.gearEfficiency;
  const implied = drive.impliedEfficiency;
  if (stated === null || !Number.isFinite(implied)) return [];
  if (Math.abs(stated / implied - 1) <= largestDifference.statedEfficiency) return [];
  const unit = effortUnit(type.motion);
  const listed = formatValue(drive.listedStallEffort, unit);
  return [
    {
      code: 'stated-efficiency-disagrees',
      severity: 'odd',
      field: 'gear_efficiency',
      message:
        `gear_efficiency is ${percent(stated)}, the listed figures imply ${percent(implied)}. ` +
        (stated > implied
          ? `A drive does not push harder than its listing, so the stall figure stays at ${listed} and only ` +
            'backdriving follows the stated efficiency.'
          : `The stated one is used: the stall figure is ${formatValue(drive.stallEffort, unit)} instead of ${listed}.`),
    },
  ];
}

function ratedPointFindings(type: DriveType, given: RatedFigures, drive: DriveParameters): Finding[] {
  const { stallEffort } = given;
  // As if the rated point decided: its own current is what the no-load current must stay below.
  const figures = uncrossed({ ...given, stallEffort: null, noLoadCurrentA: drive.noLoadCurrentA });
  const { ratedEffort, ratedSpeed, ratedCurrentA, noLoadCurrentA } = figures;
  if (ratedEffort === null || ratedSpeed === null || ratedCurrentA === null || stallEffort === null)
    return [];
  const line = motorFromRatedPoint(
    figures.ratedVoltageV,
    figures.noLoadSpeed,
    noLoadCurrentA!,
    ratedSpeed,
    ratedCurrentA,
    ratedEffort,
  );
  const stallByLine = stallEffortOf(line);
  const difference = stallByLine / stallEffort - 1;
  if (Math.abs(difference) <= largestDifference.ratedPoint) return [];
  const unit = effortUnit(type.motion);
  return [
    {
      code: 'rated-point-disagrees',
      severity: 'odd',
      field: type.motion === 'rotary' ? 'rated_torque' : 'rated_force',
      message:
        `The rated point leads to a stall figure of ${formatValue(stallByLine, unit)}, ` +
        `${percent(Math.abs(difference))} ${difference > 0 ? 'above' : 'below'} the stated ` +
        `${formatValue(stallEffort, unit)}. The stall figures are used.`,
    },
  ];
}

function geometryFindings(
  type: DriveType,
  sheet: DriveSheet,
  typical: TypicalFigures,
  drive: DriveParameters,
): Finding[] {
  const geometry = type.geometry(sheet, typical);
  if (geometry === null) return [];
  const findings: Finding[] = [];
  const difference = geometry.forward / drive.forwardEfficiency - 1;
  if (Math.abs(difference) > largestDifference.geometry) {
    findings.push({
      code: 'geometry-disagrees',
      severity: 'odd',
      field: type.motion === 'rotary' ? 'lead_angle' : 'screw_lead',
      message:
        `The geometry gives ${percent(geometry.forward)} forward efficiency, the motor figures ` +
        `${percent(drive.forwardEfficiency)}. Driving uses the motor figures, locking the geometry.`,
    });
  }
  if (geometry.standingWithCollar !== null && geometry.standing > 0 && geometry.standingWithCollar <= 0) {
    findings.push({
      code: 'collar-holds',
      severity: 'note',
      field: 'collar_diameter',
      message:
        'The thread alone does not lock; the collar’s friction would hold it. A thrust bearing takes that away, ' +
        'so locking is judged on the thread.',
    });
  }
  return findings;
}

function unusedFindings(type: DriveType, sheet: DriveSheet): Finding[] {
  if (!type.locksByCalculation || sheet.meshCount === null) return [];
  return [
    {
      code: 'not-used',
      severity: 'note',
      field: 'meshes',
      message: `meshes describes a spur train; a ${type.label} is computed from one locking mesh and does not use it.`,
    },
  ];
}
