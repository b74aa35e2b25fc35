import { holdEffortAt, holdMotorCurrentA, isBalanced, modelledHoldDraw } from '../../simulate/hold.js';
import type { BusDraw } from '../../simulate/motor-point.js';
import type { Cue } from '../../study/show.js';
import type { CalculationLine } from '../assessment.js';
import {
  amperes,
  decimal,
  effortOf,
  frequency,
  milliseconds,
  ohms,
  plain,
  positionOf,
  volts,
} from '../figures.js';
import { holdLoadWorking } from './hold-load.js';
import { from, type LineWriter, section, type Worked } from './line.js';
import { driveCurrentName, packLine } from './pack-side.js';

/** For each pose that the loop holds: effort, motor current, what pack and regulator make of it. (M1–M4, M12, M14, M15) */
export function holdWorking(worked: Worked): CalculationLine[] {
  return heldPoses(worked.study.show.loop).flatMap((cue) => {
    const place = positionOf(cue.fromPosition, worked.prepared.model.load.isHinge);
    const line = section(`Hold “${cue.name}” at ${place}`);
    return [...holdLoadWorking(worked, cue.fromPosition, line), ...currents(worked, cue.fromPosition, line)];
  });
}

/** The hold cues, each pose once. */
function heldPoses(cues: Cue[]): Cue[] {
  const holds = cues.filter((cue) => cue.action === 'hold');
  return holds.filter(
    (cue, index) => holds.findIndex((other) => other.fromPosition === cue.fromPosition) === index,
  );
}

function currents(worked: Worked, position: number, line: LineWriter): CalculationLine[] {
  const { model } = worked.prepared;
  const { drive, bus } = model;
  if (model.unpoweredHold) {
    return [line('Motor current', 'I = 0', 'it locks and the power is off while it holds', '0 A', 'M12')];
  }
  const effort = Math.abs(holdEffortAt(model, position));
  if (isBalanced(drive, effort)) {
    const why = 'in balance: there is nothing for friction to work against';
    return [line('Motor current', 'I = 0', why, '0 A', 'M12')];
  }
  const [low, high] = [holdMotorCurrentA(drive, effort, 0), holdMotorCurrentA(drive, effort, 1)];
  const share = drive.holdFrictionFraction;
  const motorA = holdMotorCurrentA(drive, effort, share);
  const perAmpere = `${plain(drive.speedConstant)}`;
  const effortText = effortOf(effort, drive.motion);
  const backward = Math.max(0, drive.backwardEfficiencyStatic);
  const lines = [
    line(
      'Least current, friction helping',
      'lo = max(0, η_b·|T|/K − I_0)',
      `max(0, ${plain(backward)} · ${effortText} / ${perAmpere} − ${amperes(drive.noLoadCurrentA)})`,
      amperes(low),
      'M12',
    ),
    line(
      'Most current, friction hindering',
      'hi = |T|/(η_f·K) + I_0',
      `${effortText} / (${plain(drive.forwardEfficiency)} · ${perAmpere}) + ${amperes(drive.noLoadCurrentA)}`,
      amperes(high),
      'M12',
    ),
    line(
      'Motor current',
      'I = lo + s·(hi − lo)',
      `${amperes(low)} + ${plain(share)} · ${amperes(high - low)}`,
      amperes(motorA),
      'M12; s from experience',
    ),
  ];
  if (!drive.pulsed) {
    return [
      ...lines,
      line(
        driveCurrentName(bus),
        'I_bus = I',
        amperes(motorA),
        amperes(motorA),
        'no pulses: switched straight to the bus',
      ),
      packLine(worked, motorA, line),
    ];
  }
  const draw: BusDraw = { powerW: 0, currentA: 0 };
  modelledHoldDraw(model, motorA, draw);
  const correction = model.holdCorrectionRatio;
  const duty = Math.min(1, (motorA * drive.resistanceOhm) / bus.nominalV);
  const blend = motorA > 0 ? draw.currentA / motorA : 0;
  const modelledA = draw.powerW / bus.nominalV + draw.currentA;
  const busA = correction * modelledA;
  lines.push(
    line(
      'Duty of the pulses',
      'D = I·R / V',
      `${amperes(motorA)} · ${ohms(drive.resistanceOhm)} / ${volts(bus.nominalV)}`,
      plain(duty),
      'M14',
    ),
    line(
      'Pulses against the decay of the current',
      'p = 1 / (f·τ)',
      `1 / (${frequency(worked.candidate.sheet.pulseFrequencyHz)} · ${milliseconds(worked.candidate.sheet.electricalTimeConstantS)})`,
      plain(drive.pulseRatio),
      from('M15', 'mohan'),
    ),
    line(
      'Blend of slow and fast pulses',
      'χ = 1 − (1 − e^(−Dp))·(1 − e^(−(1−D)p)) / (p·D·(1 − D)·(1 − e^(−p)))',
      blendNumbers(duty, drive.pulseRatio),
      decimal(blend, 3),
      from('M15', 'mohan'),
    ),
    line(
      driveCurrentName(bus),
      'I_bus = I·[D + χ·(1 − D)]',
      `${amperes(motorA)} · [${plain(duty)} + ${decimal(blend, 3)} · ${plain(1 - duty)}]`,
      amperes(modelledA),
      from('M15', 'mohan'),
    ),
  );
  if (correction !== 1) {
    lines.push(
      line(
        'Corrected by the measured hold current',
        'κ·I_bus',
        `${plain(correction)} · ${amperes(modelledA)}`,
        amperes(busA),
        'M15; measured',
      ),
    );
  }
  return [...lines, packLine(worked, busA, line)];
}

/** The blend with its numbers put in. */
function blendNumbers(duty: number, pulseRatio: number): string {
  const [on, off, p] = [plain(duty), plain(1 - duty), plain(pulseRatio)];
  return `1 − (1 − e^(−${on} · ${p})) · (1 − e^(−${off} · ${p})) / (${p} · ${on} · ${off} · (1 − e^(−${p})))`;
}
