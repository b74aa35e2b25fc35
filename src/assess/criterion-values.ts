import { driveTypes } from '../drives/registry.js';
import { type CandidateRun, decidingPowerCut } from '../simulate/outcome.js';
import type { CriterionId } from '../study/choosing.js';
import type { Candidate, Study } from '../study/study.js';

/** One candidate with what the simulation said about it, in the study it belongs to. */
export interface Judged {
  study: Study;
  candidate: Candidate;
  run: CandidateRun;
  /** Left out where nothing was drawn. */
  drawn?: DrawnFigures;
}

/** What the judgement of nominal figures takes from the draws of a candidate. */
export interface DrawnFigures {
  /** Runtime that nine draws in ten exceed; a draw that cannot play the show ran for no time. */
  runtimeP10S: number;
  /** Median of the largest hold effort as a share of stall effort, what listings flatter taken off. */
  holdEffortRatio: number | null;
  /** Median of the effort it can give over the largest it needs. */
  torqueMarginRatio: number | null;
  /** Everything drawn of the candidate: a column of draws per outcome, in the order of `outcomeNames`. */
  columns: readonly Float64Array[];
}

/** A criterion's figure in SI, or what to fill in before it can be known; infinite where it has no end. */
export interface CriterionValue {
  value: number | null;
  missing?: string;
}

interface CriterionReading {
  read(judged: Judged): number | null;
  /** Named when the figure is null. */
  missing(judged: Judged): string;
  /** Whether it is null only where a cell is blank, never because of what the drive does. */
  restsOnCells?: true;
}

const playableShow = () => 'a drive that can play the cue list';

/** How each criterion is read off a run. The compiler names a criterion that lacks its line. */
const readings: Record<CriterionId, CriterionReading> = {
  runtime: { read: ({ run }) => run.nominal.runtimeS, missing: playableShow },
  runtime_p10: { read: ({ drawn }) => drawn?.runtimeP10S ?? null, missing: () => 'an ensemble of draws' },
  hold_power: { read: ({ run }) => run.nominal.holdPowerW, missing: playableShow },
  peak_current: { read: ({ run }) => run.nominal.peakPackCurrentA, missing: playableShow },
  body_mass: { read: ({ run }) => run.nominal.bodyMassKg, missing: missingMass, restsOnCells: true },
  feature_mass: { read: ({ run }) => run.nominal.featureMassKg, missing: missingMass, restsOnCells: true },
  cue_fidelity: { read: ({ run }) => run.nominal.cueFidelityRatio, missing: playableShow },
  torque_margin: { read: ({ run }) => run.nominal.torqueMarginRatio, missing: stallField },
  winding_temperature: { read: ({ run }) => run.nominal.windingTemperatureK, missing: playableShow },
  case_temperature: { read: ({ run }) => run.nominal.caseTemperatureK, missing: playableShow },
  noise: { read: ({ run }) => run.nominal.noiseDb, missing: () => 'noise', restsOnCells: true },
  cost: {
    read: ({ run }) => run.nominal.cost,
    missing: ({ candidate }) => (candidate.sheet.priceMoney === null ? 'price' : 'extra_cost'),
    restsOnCells: true,
  },
  rework_hours: {
    read: ({ run }) => run.nominal.reworkTimeS,
    missing: () => 'rework_hours',
    restsOnCells: true,
  },
  swap_minutes: {
    read: ({ run }) => run.nominal.swapTimeS,
    missing: () => 'swap_minutes',
    restsOnCells: true,
  },
  fall_energy: { read: fallEnergyJ, missing: playableShow },
  crush_force: { read: ({ run }) => run.nominal.crushForceN, missing: stallField },
  push_force: { read: weakerPushN, missing: stallField },
  fits: { read: ({ run }) => share(run.nominal.fits), missing: missingBox },
  voltage: { read: ({ run }) => run.nominal.busVoltageV, missing: () => 'maximum_voltage' },
};

/** The figure of one criterion for one candidate; a missing one names the field to fill in. */
export function criterionValue(id: CriterionId, judged: Judged): CriterionValue {
  const reading = readings[id];
  const value = reading.read(judged);
  return value === null || Number.isNaN(value)
    ? { value: null, missing: reading.missing(judged) }
    : { value };
}

/** The cell whose blank keeps a criterion from being known for one candidate; null where none does. */
export function blankBehind(id: CriterionId, judged: Judged): string | null {
  const { value, missing } = criterionValue(id, judged);
  return value === null && readings[id].restsOnCells === true ? missing! : null;
}

/** Yes and no as 1 and 0, so that they can be weighted and drawn like any other figure. */
function share(yes: boolean | null): number | null {
  return yes === null ? null : Number(yes);
}

/** Energy at the stop after a power cut; a feature that stays has none. */
function fallEnergyJ({ run }: Judged): number {
  return decidingPowerCut(run.nominal).impactEnergyJ ?? 0;
}

/** The smaller of the two forces at the tip that move the powered feature; endless where it does not yield. */
function weakerPushN({ run }: Judged): number | null {
  const { pushDownN, pushUpN } = run.nominal;
  return Math.min(pushDownN ?? Number.POSITIVE_INFINITY, pushUpN ?? Number.POSITIVE_INFINITY);
}

function stallField({ candidate }: Judged): string {
  return driveTypes[candidate.kind].motion === 'rotary' ? 'stall_torque' : 'stall_force';
}

function missingMass({ study, candidate }: Judged): string {
  if (candidate.sheet.massKg === null) return 'mass';
  if (study.pack.massKg === null) return `mass of ${study.pack.id} in packs.csv`;
  return candidate.sheet.mountMassKg === null ? 'mount_mass' : 'electronics_mass';
}

function missingBox({ candidate: { sheet } }: Judged): string {
  const sides: [string, number | null][] = [
    ['length', sheet.lengthM],
    ['width', sheet.widthM],
    ['height', sheet.heightM],
  ];
  const blank = sides.filter(([, side]) => side === null).map(([name]) => name);
  return blank.length > 0 ? blank.join(', ') : 'length, width, height';
}
