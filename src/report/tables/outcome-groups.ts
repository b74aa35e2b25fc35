import type { CandidateAssessment } from '../../assess/assessment.js';
import { driveTypes } from '../../drives/registry.js';
import type { ReportContext } from '../context.js';
import { measuredHold } from '../words/measured-hold.js';
import { endReasonWords, holdCurrentWords, lockingWords } from '../words/outcome-words.js';
import { type FigureRow, figure, words, yesNo } from './figure-table.js';

/** Outcomes of one candidate that belong together, under their heading. */
export interface OutcomeGroup {
  title: string;
  rows: FigureRow[];
}

/** What one pack gives, and what the pack and its wires must bear. */
export function packOutcomes({ nominal }: CandidateAssessment): OutcomeGroup {
  return {
    title: 'On one pack',
    rows: [
      figure('Runtime', nominal.runtimeS, 'minutes'),
      words('Ended by', nominal.endReason === null ? '–' : endReasonWords[nominal.endReason]),
      figure('Warning voltage', nominal.warningS, 'minutes'),
      figure('Loop as played', nominal.loopS, 'seconds'),
      figure('Mean pack current', nominal.meanPackCurrentA, 'amperes'),
      figure('Peak pack current', nominal.peakPackCurrentA, 'amperes'),
      figure('Start-up current', nominal.startUpCurrentA, 'amperes'),
    ],
  };
}

/** What a pose costs, the figures of the hold current side by side. */
export function holdOutcomes(context: ReportContext, candidate: CandidateAssessment): OutcomeGroup {
  const { nominal } = candidate;
  const measured = measuredHold(context, candidate);
  return {
    title: 'Holding',
    rows: [
      figure('Power', nominal.holdPowerW, 'watts'),
      figure('Pack current', nominal.holdPackCurrentA, 'amperes'),
      figure('Motor current, each', nominal.holdMotorCurrentA, 'amperes'),
      figure('– by the linear rule', nominal.holdPackCurrentLinearRuleA, 'amperes'),
      figure('– by the pulse model', nominal.holdPackCurrentPulseModelA, 'amperes'),
      figure('– as measured', measured?.currentA, 'amperes'),
      words('Used', holdCurrentWords[nominal.holdCurrentUsed]),
      ...(measured?.use === 'weights' ? [words('Measured', 'weights the draws')] : []),
      figure('Share of stall, most', nominal.holdEffortRatio, 'percent'),
      words('Its gears', lockingWords[nominal.locking]),
    ],
  };
}

/** How well the cues are followed. */
export function moveOutcomes({ nominal }: CandidateAssessment): OutcomeGroup {
  const stretches = nominal.stretchRatios.filter((ratio) => ratio !== null);
  const slowest = stretches.length > 0 ? Math.max(...stretches) : null;
  return {
    title: 'Moving',
    rows: [
      figure('Cue fidelity', nominal.cueFidelityRatio, 'ratio'),
      figure('Slowest move, ratio', slowest, 'ratio'),
      figure('Torque margin', nominal.torqueMarginRatio, 'ratio'),
    ],
  };
}

/** The motor as its sheet implies it, seen from the output. */
export function motorOutcomes({ units }: ReportContext, { motor, type }: CandidateAssessment): OutcomeGroup {
  const rotary = driveTypes[type].motion === 'rotary';
  const effort = rotary ? units.torque : units.force;
  return {
    title: 'Motor, seen from the output',
    rows: [
      figure('Resistance', motor.resistanceOhm, 'ohms'),
      figure('Speed constant', motor.speedConstant, rotary ? units.turningConstant : units.drivingConstant),
      figure('No-load current', motor.noLoadCurrentA, 'amperes'),
      figure('Stall current', motor.stallCurrentA, 'amperes'),
      figure('Stall, as listed', motor.listedStallEffort, effort),
      figure('Stall, used', motor.stallEffort, effort),
      figure('Efficiency, driving', motor.forwardEfficiency, 'ratio'),
      figure('Backwards, running', motor.backwardEfficiency, 'ratio'),
      figure('Backwards, standing', motor.backwardEfficiencyStatic, 'ratio'),
      figure('Backwards, shaken', motor.backwardEfficiencyShaken, 'ratio'),
    ],
  };
}

/** Mass, fit and money. */
export function costOutcomes(
  { currency, units, assessment }: ReportContext,
  { nominal }: CandidateAssessment,
): OutcomeGroup {
  return {
    title: 'Mass, fit, money',
    rows: [
      figure(
        assessment.study.carrier.worn ? 'Mass on the body' : 'Mass with packs',
        nominal.bodyMassKg,
        units.mass,
      ),
      figure('Moving mass', nominal.featureMassKg, units.mass),
      yesNo('Fits its space', nominal.fits),
      figure('Voltage it sees', nominal.busVoltageV, 'volts'),
      figure('Voltage it bears', nominal.maximumVoltageV, 'volts'),
      { ...figure('Cost', nominal.cost, 'money'), unit: nominal.cost === null ? '' : currency },
      figure('Work', nominal.reworkTimeS, 'hours'),
      figure('Swap', nominal.swapTimeS, 'minutes'),
      figure('Noise at 1 m', nominal.noiseDb, 'decibels'),
    ],
  };
}

/** Energy of one loop by consumer. */
export function energyOutcomes({ nominal }: CandidateAssessment): OutcomeGroup {
  const { energy } = nominal;
  const title = 'Energy of one loop';
  if (energy === null) return { title, rows: [words('Loop', 'cannot be played')] };
  return {
    title,
    rows: [
      figure('Drives, moving', energy.drivesMovingJ, 'joules'),
      figure('Drives, holding', energy.drivesHoldingJ, 'joules'),
      figure('Drives, resting', energy.drivesRestingJ, 'joules'),
      figure('Drives, idle', energy.drivesIdleJ, 'joules'),
      ...energy.loads.map((load) => figure(load.label, load.energyJ, 'joules')),
    ],
  };
}
