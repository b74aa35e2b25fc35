import { type DriveParameters, uncrossed } from '../../drives/drive-parameters.js';
import { usualMeshCount } from '../../drives/position-servo.js';
import { figuresAtVoltage } from '../../drives/rated-figures.js';
import { driveTypes } from '../../drives/registry.js';
import type { RatedFigures } from '../../drives/sheet.js';
import { spurStagesEfficiency, staticBackward } from '../../physics/gear-train.js';
import { formatValue } from '../../quantity/format.js';
import type { CalculationLine } from '../assessment.js';
import { amperes, effortOf, percent, plain, volts } from '../figures.js';
import { from, type LineWriter, section, type Worked } from './line.js';

const motorBook = from('M5', 'hughes-drury');

/** From the data sheet to the constants of the motor and its gears. (M5–M9) */
export function motorWorking(worked: Worked): CalculationLine[] {
  const { candidate, prepared } = worked;
  const { drive, bus } = prepared.model;
  const figures = uncrossed(figuresAtVoltage(candidate.sheet, bus.nominalV));
  const line = section('Motor');
  return [
    ...filledGaps(worked, figures, line),
    ...constants(drive, figures, line),
    ...efficiency(worked, line),
    backward(worked, line),
  ];
}

const speedIn = (drive: DriveParameters, speed: number): string =>
  drive.motion === 'rotary' ? `${plain(speed)} rad/s` : formatValue(speed, 'mm/s');

const constantIn = (drive: DriveParameters): string =>
  `${plain(drive.speedConstant)} ${drive.motion === 'rotary' ? 'V·s/rad' : 'V·s/m'}`;

/** Currents that the sheet leaves blank. */
function filledGaps(
  { candidate, prepared }: Worked,
  figures: RatedFigures,
  line: LineWriter,
): CalculationLine[] {
  const { drive } = prepared.model;
  const { noLoadCurrentRatio: i } = candidate.typical;
  const forwardEfficiency = candidate.sheet.gearEfficiency ?? candidate.typical.forwardEfficiency;
  const lines: CalculationLine[] = [];
  if (figures.stallCurrentA === null && figures.ratedCurrentA === null) {
    const numbers = `${effortOf(drive.listedStallEffort, drive.motion)} · ${speedIn(drive, drive.noLoadSpeed)} / (${plain(forwardEfficiency)} · ${volts(drive.ratedVoltageV)} · (1 − ${plain(i)})²)`;
    lines.push(
      line(
        'Stall current, assumed',
        'I_s = T_s·w_0 / (η·V·(1 − i)²)',
        numbers,
        amperes(drive.stallCurrentA),
        motorBook,
      ),
    );
  }
  if (figures.noLoadCurrentA === null) {
    const numbers = `${plain(i)} · ${amperes(drive.stallCurrentA)}`;
    lines.push(
      line('No-load current, assumed', 'I_0 = i·I_s', numbers, amperes(drive.noLoadCurrentA), motorBook),
    );
  }
  return lines;
}

function constants(drive: DriveParameters, figures: RatedFigures, line: LineWriter): CalculationLine[] {
  const voltage = volts(drive.ratedVoltageV);
  const resistance = formatValue(drive.resistanceOhm, 'Ω');
  const noLoad = amperes(drive.noLoadCurrentA);
  const { ratedSpeed, ratedCurrentA } = figures;
  const byRatedPoint = figures.stallEffort === null && ratedSpeed !== null && ratedCurrentA !== null;
  const resistanceLine = byRatedPoint
    ? line(
        'Winding resistance',
        'R = V·(w_0 − w_1) / (I_1·w_0 − I_0·w_1)',
        `${voltage} · (${speedIn(drive, drive.noLoadSpeed)} − ${speedIn(drive, ratedSpeed)}) / (${amperes(ratedCurrentA)} · ${speedIn(drive, drive.noLoadSpeed)} − ${noLoad} · ${speedIn(drive, ratedSpeed)})`,
        resistance,
        from('M6', 'hughes-drury'),
      )
    : line(
        'Winding resistance',
        'R = V / I_s',
        `${voltage} / ${amperes(drive.stallCurrentA)}`,
        resistance,
        motorBook,
      );
  const constantNumbers = `(${voltage} − ${noLoad} · ${resistance}) / ${speedIn(drive, drive.noLoadSpeed)}`;
  return [
    resistanceLine,
    line('Motor constant', 'K = (V − I_0·R) / w_0', constantNumbers, constantIn(drive), motorBook),
  ];
}

function efficiency({ candidate, prepared }: Worked, line: LineWriter): CalculationLine[] {
  const { drive } = prepared.model;
  const currents = `(${amperes(drive.stallCurrentA)} − ${amperes(drive.noLoadCurrentA)})`;
  const numbers = `${effortOf(drive.listedStallEffort, drive.motion)} / (${constantIn(drive)} · ${currents})`;
  const implied = line(
    'Gear efficiency by the sheet',
    'η_f = T_s / (K·(I_s − I_0))',
    numbers,
    plain(drive.impliedEfficiency),
    motorBook,
  );
  if (Math.abs(drive.forwardEfficiency - drive.impliedEfficiency) < 1e-9) return [implied];
  const used = line(
    'Stall effort used',
    'T_s = η_f·K·(I_s − I_0)',
    `${plain(drive.forwardEfficiency)} · ${constantIn(drive)} · ${currents}`,
    effortOf(drive.stallEffort, drive.motion),
    `M5; ${candidate.sheet.gearEfficiency === null ? `the type's ceiling of ${percent(drive.forwardEfficiency)}, from experience` : 'gear efficiency as stated'}`,
  );
  return [implied, used];
}

/** How well effort passes backwards from standstill, by whichever rule decided. */
function backward({ candidate, prepared }: Worked, line: LineWriter): CalculationLine {
  const { sheet, typical, kind } = candidate;
  const { drive } = prepared.model;
  const type = driveTypes[kind];
  const result = `${plain(drive.backwardEfficiencyStatic)} (running ${plain(drive.backwardEfficiency)}, shaken ${plain(drive.backwardEfficiencyShaken)})`;
  const quantity = 'Backward efficiency from standstill';
  if (sheet.backwardEfficiency !== null) {
    return line(
      quantity,
      'as stated',
      `backward_efficiency = ${plain(sheet.backwardEfficiency)}`,
      result,
      'M7; data sheet',
    );
  }
  if (type.geometry(sheet, typical) !== null) {
    return line(
      quantity,
      'from friction and the angle of thread or worm',
      'geometry as listed',
      result,
      from('M8, M9', 'shigley'),
    );
  }
  const efficiencyText = plain(drive.gearEfficiency);
  const derived = 'M7; equal loss both ways, re-derived, from memory';
  if (!type.locksByCalculation) {
    const meshes = sheet.meshCount ?? usualMeshCount;
    return line(
      quantity,
      'η_b = (2 − η_f^(−1/n))^n',
      `(2 − ${efficiencyText}^(−1/${meshes}))^${meshes}`,
      result,
      derived,
    );
  }
  const mesh = staticBackward(drive.gearEfficiency / spurStagesEfficiency, typical.staticFrictionRatio);
  return line(
    quantity,
    `η_b = [1 − s·(${spurStagesEfficiency}/η_f − 1)] ${mesh < 0 ? `/ ${spurStagesEfficiency}` : `· (2 − 1/${spurStagesEfficiency})`}`,
    `[1 − ${plain(typical.staticFrictionRatio)} · (${spurStagesEfficiency}/${efficiencyText} − 1)] ${mesh < 0 ? `/ ${spurStagesEfficiency}` : `· ${plain(2 - 1 / spurStagesEfficiency)}`}`,
    result,
    derived,
  );
}
