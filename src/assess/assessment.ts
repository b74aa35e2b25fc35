import type { DriveKind } from '../drives/sheet.js';
import type { CriterionId } from '../study/choosing.js';
import type { Study } from '../study/study.js';

/** Version of the results contract: new keys may come, keys keep their meaning. */
export const resultsFormat = 'holdwright-results/1';

/** Version of the model: moves whenever the same inputs give other numbers. */
export const modelVersion = '1';

export type LockingClass = 'holds-when-shaken' | 'holds-at-rest' | 'does-not-hold';

/** What ended the run on one pack. */
export type EndReason = 'cut-off' | 'cell-floor' | 'reserve' | 'controller' | 'regulator' | 'collapse';

/** `severe` and `caution` need action before use; `note` is worth knowing. */
export type CautionSeverity = 'severe' | 'caution' | 'note';

/** Something odd, impossible or worth knowing about a candidate's figures. */
export interface Finding {
  code: string;
  severity: 'impossible' | 'odd' | 'note';
  /** Field it concerns, as in the CSV; null when it concerns the whole drive. */
  field: string | null;
  message: string;
}

/** A value the tool had to take because the file left it blank. */
export interface AssumedValue {
  field: string;
  /** SI value, or the choice taken. */
  value: number | string | boolean | null;
  /** SI unit symbol, empty for pure numbers and choices. */
  unit: string;
  /** As a person reads it: `10 mA (4–30)`. */
  shown: string;
  basis: string;
}

/** One hard limit against one candidate. */
export interface LimitOutcome {
  criterion: CriterionId | string;
  direction: 'at-least' | 'at-most';
  /** SI. */
  limit: number;
  /** SI; null when it cannot be judged. */
  value: number | null;
  /** null: not judged. */
  passes: boolean | null;
  /** How far inside the limit, as a share of the limit; negative when it fails; null when not judged. */
  margin: number | null;
  /** The figure whose absence prevents judging. */
  missing?: string;
  /** Why it fails, in words, when a number does not say it (`cannot move at 42°`). */
  reason?: string;
}

/** One weighted criterion against one candidate. */
export interface CriterionOutcome {
  criterion: CriterionId;
  value: number | null;
  /** 0…1; a missing figure counts as 0. */
  worthScore: number;
  weightScore: number;
  missing?: string;
}

/** What happens after the power is cut at the highest hold, for one state of the motor leads. */
export interface PowerCutOutcome {
  stays: boolean;
  /** Under the shaking of the carrier. */
  staysWhenShaken: boolean;
  fallS: number | null;
  tipSpeedMPerS: number | null;
  largestTipSpeedMPerS: number | null;
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

/** Everything computed for one candidate from nominal figures. SI; null = does not occur or not judged. */
export interface NominalOutcome {
  runtimeS: number | null;
  endReason: EndReason | null;
  warningS: number | null;
  loopS: number;
  cueFidelityRatio: number | null;
  stretchRatios: number[];
  meanPackCurrentA: number;
  peakPackCurrentA: number;
  holdPackCurrentA: number;
  holdMotorCurrentA: number;
  holdPowerW: number;
  holdCurrentLinearRuleA: number;
  holdCurrentPulseModelA: number;
  holdCurrentMeasuredA?: number;
  /** Which of the three the result uses. */
  holdCurrentUsed: 'pulse-model' | 'measured' | 'direct-current' | 'unpowered';
  locking: LockingClass;
  powerCut: PowerCutOutcome & { shorted: PowerCutOutcome };
  /** At the tip, at the first hold, powered. */
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
  maximumVoltageV: number | null;
  cost: number | null;
  reworkTimeS: number | null;
  swapTimeS: number | null;
  noiseDb: number | null;
  energy: LoopEnergy;
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

/** One line of the working: what was computed, from what, by which equation. */
export interface CalculationLine {
  /** Section heading it belongs to: `Motor`, `Hold at cue 3`. */
  section: string;
  quantity: string;
  /** In symbols: `R = V / I_s`. */
  equation: string;
  /** With numbers put in: `7.4 V / 2.5 A`. */
  numbers: string;
  result: string;
  /** Equation number and source. */
  source: string;
}

export interface CandidateAssessment {
  id: string;
  label: string;
  type: DriveKind;
  isBaseline: boolean;
  rank: number;
  /** null: passes what could be judged, something could not. */
  passes: boolean | null;
  /** 0…1, on the user's own weights. */
  score: number;
  nonDominated: boolean;
  limits: LimitOutcome[];
  criteria: CriterionOutcome[];
  findings: Finding[];
  assumed: AssumedValue[];
  motor: MotorOutcome;
  nominal: NominalOutcome;
  series: { loop: LoopSeries; runDown: RunDownSeries; heatInShow: HeatSeries; heatHolding: HeatSeries };
}

export interface Caution {
  code: string;
  severity: CautionSeverity;
  /** Candidate it concerns; null for the whole feature or standing cautions. */
  candidate: string | null;
  /** The figure that raised it, with unit: `94 N`. Empty for standing cautions. */
  figure: string;
  text: string;
  /** What to do about it. */
  action: string;
}

/** A measurement that would make the answer surer. */
export interface MeasurementAdvice {
  field: string;
  candidate: string | null;
  label: string;
  why: string;
  instrument: string;
  method: string;
  minutes: number;
  /** How far the outcome named in `why` moves over the value's 10–90 % range. */
  swing: number;
}

/** What the supply's protection must and must not do. */
export interface ProtectionOutcome {
  candidate: string;
  peakCurrentA: number;
  tenSecondCurrentA: number;
  meanCurrentA: number;
  startUpCurrentA: number | null;
  /** Limits the currents were compared with; null = none fitted or not known. */
  packContinuousA: number | null;
  fuseContinuousA: number | null;
  protectionTripA: number | null;
  wireContinuousA: number | null;
  /** The answer: trip current and delay that carries the show and still protects pack and wire; null = none fits. */
  adviceTripA: number | null;
  adviceDelayS: number | null;
  advice: string;
}

export interface Assessment {
  format: typeof resultsFormat;
  version: string;
  modelVersion: string;
  seed: number;
  draws: number;
  inputHash: string;
  /** ISO time of the run, or the study's date; set by the caller so that results stay reproducible. */
  study: Study;
  /** In rank order. */
  candidates: CandidateAssessment[];
  leader: string | null;
  baseline: string | null;
  /** One sentence and three reasons from nominal figures. */
  answer: { sentence: string; reasons: string[] };
  nextMeasurements: MeasurementAdvice[];
  cautions: Caution[];
  protection: ProtectionOutcome[];
  figuresGiven: number;
  figuresAssumed: number;
  /** Files as read, with their hashes. */
  inputs: { name: string; sha256: string; text: string }[];
}
