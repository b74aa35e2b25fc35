import type { AssumedValue, Finding } from '../drives/finding.js';

export type LockingClass = 'holds-when-shaken' | 'holds-at-rest' | 'does-not-hold';

/** What ended the run on one pack. */
export type EndReason = 'cut-off' | 'cell-floor' | 'reserve' | 'controller' | 'regulator' | 'collapse';

/** The two mechanical stops. */
export type StopName = 'lower' | 'upper';

/** What happens after the power is cut at a hold, for one state of the motor leads. */
export interface PowerCutOutcome {
  /** At every hold, as it is carried: a worn feature is always shaken. */
  stays: boolean;
  /** At every hold, under the shaking of a carrier. */
  staysWhenShaken: boolean;
  /**
   * The hold that the rest is told of, rad or m: the one from which it lands with most energy; where it stays, the one
   * at which it is pulled most.
   */
  fromPosition: number;
  /** The stop it is pulled to there: the upper one where a spring outweighs it or it stands past the vertical. */
  towards: StopName;
  /** To that stop, from where friction lets go; null where it stays or only gives way slowly. */
  fallS: number | null;
  tipSpeedMPerS: number | null;
  largestTipSpeedMPerS: number | null;
  /** At the stop; 0 where it gives way slowly, null where it stays. */
  impactEnergyJ: number | null;
  /** Energy over 5 mm of give. */
  tipForceN: number | null;
}

/** Charge of one loop by consumer and by what the feature does, at the pack's nominal voltage. */
export interface LoopEnergy {
  drivesMovingJ: number;
  drivesHoldingJ: number;
  drivesRestingJ: number;
  /** Idle electronics of the drives, whole loop. */
  drivesIdleJ: number;
  loads: { id: string; label: string; energyJ: number }[];
}

/** Effort needed and available at one moment of the loop; for charts. */
export interface LoopSeries {
  timesS: number[];
  positions: number[];
  /** Effort one drive must give, in its own motion; sign as the drive sees it. */
  driveEfforts: number[];
  /** Effort one drive can give at that speed from the weakest bus, same sign convention (≥ 0). */
  availableEfforts: number[];
  /** All drives and loads, at nominal voltage. */
  packCurrentsA: number[];
}

/** The run on one pack; for charts. `voltage` is the bus after the leads, all cells. */
export interface RunDownSeries {
  timesS: number[];
  lowestVoltagesV: number[];
  meanVoltagesV: number[];
  socFractions: number[];
}

/** Winding and case over time; for charts. */
export interface HeatSeries {
  timesS: number[];
  windingTemperaturesK: number[];
  caseTemperaturesK: number[];
}

/** What really happens at a power cut: joined leads count only where the drive joins them by itself. */
export const decidingPowerCut = ({ powerCut }: Pick<NominalOutcome, 'powerCut'>): PowerCutOutcome =>
  powerCut.decides === 'shorted' ? powerCut.shorted : powerCut;

/** Everything computed for one candidate from nominal figures. SI; null = does not occur or not judged. */
export interface NominalOutcome {
  runtimeS: number | null;
  endReason: EndReason | null;
  warningS: number | null;
  /** Played length of the loop; null (like means and peaks below) when a move cannot be made at all. */
  loopS: number | null;
  cueFidelityRatio: number | null;
  /** Played over written time per move cue, those played once first; null where the move cannot be made. */
  stretchRatios: (number | null)[];
  meanPackCurrentA: number | null;
  peakPackCurrentA: number | null;
  holdPackCurrentA: number;
  holdMotorCurrentA: number;
  holdPowerW: number;
  /** The next three at the drives' own bus, before any regulator, without idle current. */
  holdCurrentLinearRuleA: number;
  holdCurrentPulseModelA: number;
  holdCurrentMeasuredA?: number;
  /** Two of them at the pack, idle current included: comparable with `holdPackCurrentA` and with a meter there. */
  holdPackCurrentLinearRuleA: number;
  holdPackCurrentPulseModelA: number;
  /** Which of the three the result uses. */
  holdCurrentUsed: 'pulse-model' | 'measured' | 'direct-current' | 'unpowered';
  locking: LockingClass;
  /** With open leads; `shorted` with joined ones; `decides` names which of the two is the drive's own. */
  powerCut: PowerCutOutcome & { decides: 'open' | 'shorted'; shorted: PowerCutOutcome };
  /** At the tip, at the first hold, powered; null when it does not yield: it locks. */
  pushDownN: number | null;
  pushUpN: number | null;
  /** The same without power; null when it does not yield. */
  unpoweredPushDownN: number | null;
  unpoweredPushUpN: number | null;
  crushForceN: number | null;
  crushForceAtTipN: number | null;
  startUpCurrentA: number | null;
  windingTemperatureK: number | null;
  caseTemperatureK: number | null;
  /** Case and winding if the first hold were held for ever; null = no settled state. */
  settledHoldWindingK: number | null;
  settledHoldCaseK: number | null;
  thermalRunaway: boolean;
  timeToLimitHoldingS: number | null;
  /** Worst share of on-time in the drive's window; null when no window applies. */
  onShareFraction: number | null;
  bodyMassKg: number | null;
  featureMassKg: number | null;
  torqueMarginRatio: number | null;
  /** Largest hold effort as a share of stall effort. */
  holdEffortRatio: number | null;
  fits: boolean | null;
  /** Highest voltage the drive sees. */
  busVoltageV: number;
  maximumVoltageV: number;
  cost: number | null;
  reworkTimeS: number | null;
  swapTimeS: number | null;
  /** Sound level of one drive while it moves, at 1 m. */
  noiseDb: number | null;
  /** null when a move cannot be made. */
  energy: LoopEnergy | null;
}

/** Constants of the motor seen from the drive's output. `speedConstant` in V·s/rad or V·s/m. */
export interface MotorOutcome {
  resistanceOhm: number;
  speedConstant: number;
  noLoadCurrentA: number;
  stallCurrentA: number;
  stallEffort: number;
  listedStallEffort: number;
  forwardEfficiency: number;
  backwardEfficiency: number;
  backwardEfficiencyStatic: number;
  backwardEfficiencyShaken: number;
}

/** A way in which the candidate cannot do the job at all; each becomes a failed hard limit. */
export interface Failure {
  /** `moves`, `holds`, `linkage`, `positions`, `cord`, `regulator`. */
  code: 'moves' | 'holds' | 'linkage' | 'positions' | 'cord' | 'regulator';
  /** Position at which it happens, rad or m; null when it has none. */
  position: number | null;
  /** In words, with the position and figures in units a person reads. */
  reason: string;
  /** The computed figure and what it had to stay within, when numbers say it; SI. */
  value: number | null;
  limit: number | null;
  /** The blank that would have to be filled in before anybody knows; left out where it surely fails. */
  missing?: string;
}

/** Peaks and means of the pack current at nominal voltage, for protection. */
export interface SupplyDemand {
  peakCurrentA: number | null;
  /** Largest mean over any ten seconds of the loop. */
  tenSecondCurrentA: number | null;
  meanCurrentA: number | null;
  startUpCurrentA: number | null;
}

/** Everything the simulation says about one candidate, before anybody judges it. */
export interface CandidateRun {
  id: string;
  motor: MotorOutcome;
  nominal: NominalOutcome;
  demand: SupplyDemand;
  series: { loop: LoopSeries; runDown: RunDownSeries; heatInShow: HeatSeries; heatHolding: HeatSeries };
  failures: Failure[];
  findings: Finding[];
  assumed: AssumedValue[];
}
