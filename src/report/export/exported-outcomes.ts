import type { CandidateAssessment } from '../../assess/assessment.js';
import type { Dimension } from '../../quantity/dimension.js';
import type { OutcomeName } from '../../simulate/ensemble/ensemble.js';
import { decidingPowerCut, type NominalOutcome } from '../../simulate/outcome.js';

/** An outcome as a spreadsheet gets it. */
export interface ExportedOutcome {
  name: string;
  /** Unit in the header; '' for a pure number, null for the currency of the study. */
  unit: string | null;
  dimension: Dimension;
  /** SI; null where it does not occur or is not known. */
  nominal(candidate: CandidateAssessment): number | null;
  /** Its band over the draws; null for what no draw computes. */
  outcome: OutcomeName | null;
}

type Nominal = NominalOutcome;

/** An outcome whose nominal figure has the name of its band. */
function drawn(
  outcome: OutcomeName & keyof Nominal,
  name: string,
  dimension: Dimension,
  unit: string | null,
): ExportedOutcome {
  return { name, unit, dimension, outcome, nominal: ({ nominal }) => nominal[outcome] as number | null };
}

/** Every outcome with a figure, in the order of a report. */
export const exportedOutcomes: readonly ExportedOutcome[] = [
  drawn('runtimeS', 'runtime', 'time', 'min'),
  drawn('warningS', 'until the warning', 'time', 'min'),
  drawn('loopS', 'loop as played', 'time', 's'),
  drawn('meanPackCurrentA', 'mean pack current', 'current', 'A'),
  drawn('peakPackCurrentA', 'peak pack current', 'current', 'A'),
  drawn('startUpCurrentA', 'start-up current', 'current', 'A'),
  drawn('holdPackCurrentA', 'pack current while holding', 'current', 'A'),
  drawn('holdPowerW', 'power while holding', 'power', 'W'),
  drawn('cueFidelityRatio', 'cue fidelity', 'ratio', ''),
  drawn('torqueMarginRatio', 'torque margin', 'ratio', ''),
  drawn('holdEffortRatio', 'share of stall while holding', 'ratio', '%'),
  drawn('windingTemperatureK', 'winding temperature', 'temperature', '°C'),
  drawn('caseTemperatureK', 'case temperature', 'temperature', '°C'),
  drawn('settledHoldWindingK', 'winding temperature of an endless hold', 'temperature', '°C'),
  other('fallS', 'time to fall', 'time', 's', (nominal) => decidingPowerCut(nominal).fallS),
  other('tipSpeedMPerS', 'speed of the tip in a fall', 'speed', 'm/s', tipSpeedMPerS),
  other('fallEnergyJ', 'energy of a fall', 'energy', 'J', fallEnergyJ),
  drawn('crushForceN', 'crush force', 'force', 'N'),
  other('pushForceN', 'yields to a push', 'force', 'N', weakerPushN),
  drawn('bodyMassKg', 'mass on the body', 'mass', 'g'),
  drawn('featureMassKg', 'moving mass', 'mass', 'g'),
  drawn('cost', 'cost', 'money', null),
  drawn('reworkTimeS', 'work', 'time', 'h'),
  other(null, 'swap time', 'time', 'min', ({ swapTimeS }) => swapTimeS),
  other(null, 'noise at 1 m', 'sound-level', 'dB', ({ noiseDb }) => noiseDb),
  other(null, 'voltage it sees', 'voltage', 'V', ({ busVoltageV }) => busVoltageV),
];

/** An outcome whose nominal figure stands elsewhere than its band. */
function other(
  outcome: OutcomeName | null,
  name: string,
  dimension: Dimension,
  unit: string,
  read: (nominal: Nominal) => number | null,
): ExportedOutcome {
  return { name, unit, dimension, outcome, nominal: ({ nominal }) => read(nominal) };
}

/** null where it locks. */
function weakerPushN({ pushDownN, pushUpN }: Nominal): number | null {
  return pushDownN === null || pushUpN === null ? null : Math.min(pushDownN, pushUpN);
}

function tipSpeedMPerS(nominal: Nominal): number | null {
  return decidingPowerCut(nominal).tipSpeedMPerS;
}

/** 0 where it stays or gives way slowly, as in the draws. */
function fallEnergyJ(nominal: Nominal): number {
  return decidingPowerCut(nominal).impactEnergyJ ?? 0;
}
