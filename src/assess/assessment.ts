import type { AssumedValue, Finding } from '../drives/finding.js';
import type { DriveKind } from '../drives/sheet.js';
import type { OutcomeName } from '../simulate/ensemble/ensemble.js';
import type {
  HeatSeries,
  LoopSeries,
  MotorOutcome,
  NominalOutcome,
  RunDownSeries,
} from '../simulate/outcome.js';
import type { CriterionId } from '../study/choosing.js';
import type { Study } from '../study/study.js';
import type { BreakEven } from './break-even.js';
import type { Band, Certainty, RatedChange, Verdict } from './certainty.js';
import type { DayPlan } from './day/day-plan.js';
import type { ChangeFigures, ChangeLeftOut } from './lesser-changes/lesser-change.js';

/** Version of the results contract: new keys may come, keys keep their meaning. */
export const resultsFormat = 'holdwright-results/1';

/** Version of the model: moves whenever the same inputs give other numbers. */
export const modelVersion = '3';

/** `severe` and `caution` need action before use; `note` is worth knowing. */
export type CautionSeverity = 'severe' | 'caution' | 'note';

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
  /** 0…1; 0 where what the drive does gives no figure. What a blank cell hides is left out for all candidates. */
  worthScore: number;
  weightScore: number;
  missing?: string;
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

/** One candidate judged: what it does, which limits it holds, what that is worth, and where it ranks. */
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
  /** Bands of the outcomes over the draws; empty without draws. */
  uncertain: Partial<Record<OutcomeName, Band>>;
  /** Share at rank 1, 2, … over draws and random weights; empty without draws. */
  acceptability: number[];
  series: { loop: LoopSeries; runDown: RunDownSeries; heatInShow: HeatSeries; heatHolding: HeatSeries };
}

/** What somebody has to know before the feature moves near people, with what raised it and what to do. */
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
  /** Expected gain of score from knowing it before choosing; left out without draws. */
  worthScore?: number;
  /** Share of draws in which knowing it would change the choice; left out without draws. */
  changedProbability?: number;
  /** How exact the reading has to be: `±3 %`; left out without draws. */
  precision?: string;
  /** Where the answer goes: `hold_current in measured.csv`. */
  goesInto?: string;
}

/** What the supply's protection must and must not do. */
export interface ProtectionOutcome {
  candidate: string;
  peakCurrentA: number | null;
  tenSecondCurrentA: number | null;
  meanCurrentA: number | null;
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

/** Where the ladder of lesser changes starts, and what makes no sense here. */
export interface ChangesFrom {
  /** The drive of today. */
  candidate: string;
  before: ChangeFigures;
  passesBefore: boolean | null;
  leftOut: ChangeLeftOut[];
}

/** The event day with every candidate, in rank order. */
export interface DayOutcome {
  /** The candidate that the verdict recommends, or the first in rank. */
  candidate: string;
  /** The day of that candidate with the lesser change that the verdict advises; null where it advises none. */
  changed: DayPlan | null;
  plans: DayPlan[];
}

/** The one result of a study: what JSON prints, what the archive keeps and what every page is made from. SI throughout. */
export interface Assessment {
  format: typeof resultsFormat;
  version: string;
  modelVersion: string;
  seed: number;
  draws: number;
  inputHash: string;
  /** The study as it was read, with all that was assumed. */
  study: Study;
  /** The study that single figures are computed from, where readings have moved them; null: that as read. */
  believed: Study | null;
  /** In rank order. */
  candidates: CandidateAssessment[];
  leader: string | null;
  baseline: string | null;
  /** One sentence and three reasons from nominal figures. */
  answer: { sentence: string; reasons: string[] };
  /** The answer with how sure it is; from nominal figures where there are no draws. */
  verdict: Verdict;
  /** Everything the draws add; null without draws. */
  certainty: Certainty | null;
  /** Small changes to the drive of today, the most useful first, then the best pair; empty without a baseline. */
  lesserChanges: RatedChange[];
  lesserChangesFrom: ChangesFrom | null;
  /** null without day.csv. */
  day: DayOutcome | null;
  /** When the change to the leader has paid for itself; null without a baseline or where it leads. */
  breakEven: BreakEven | null;
  nextMeasurements: MeasurementAdvice[];
  cautions: Caution[];
  protection: ProtectionOutcome[];
  figuresGiven: number;
  figuresAssumed: number;
  /** Files as read, with their hashes. */
  inputs: { name: string; sha256: string; text: string }[];
}
