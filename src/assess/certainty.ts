import type { OutcomeName } from '../simulate/ensemble/ensemble.js';
import type { CriterionId } from '../study/choosing.js';
import type { LesserChange, LesserChangeId } from './lesser-changes/lesser-change.js';

/** Spread of one outcome over the draws in which it occurs; SI. */
export interface Band {
  p10: number;
  median: number;
  p90: number;
  /** Share of draws in which it occurs at all. */
  occursFraction: number;
}

/** How sure something is, in words: P ≥ 0.90 clear, 0.75–0.90 likely, else open. */
export type SurenessWord = 'clear' | 'likely' | 'open';

/** What the draws say about one candidate. */
export interface CandidateCertainty {
  /** Bands of the outcomes; an outcome that never occurs is left out. */
  uncertain: Partial<Record<OutcomeName, Band>>;
  /** Share of draws in which every limit holds; null when a limit cannot be judged. */
  passProbability: number | null;
  /** The same for each limit, in the order of the candidate's limits; null = not judged. */
  limitProbabilities: (number | null)[];
  /** Passes nominally, but in fewer than 80 % of draws. */
  passesOnPaper: boolean;
  /** Share of draws in which it leads with the user's own weights; null when no bands are given. */
  leadProbability: number | null;
  /** Score with the user's own weights over the draws; null when no bands are given. */
  score: Band | null;
  /** Share at rank 1, 2, … over draws and random weights; empty when no bands are given. */
  acceptability: number[];
  /** Mean weights of the draws in which it leads, by criterion; null when it never does. */
  centralWeights: Partial<Record<CriterionId, number>> | null;
  /** Share of draws in which it leads with its own central weights. */
  confidenceFactor: number | null;
}

/** P(row beats column) with the user's own weights. */
export interface PairwiseProbability {
  candidate: string;
  against: string;
  beatProbability: number;
}

/** An input and what its 10–90 % range does to the leader's lead in score over the next or the baseline. */
export interface InputSwing {
  path: string;
  field: string;
  owner: string | null;
  label: string;
  /** Values at 10 and 90 %, shown with unit. */
  lowShown: string;
  highShown: string;
  /** Lead in score at those values. */
  leadAtLow: number;
  leadAtHigh: number;
}

/** The value of an input at which the order changes. */
export interface InputFlip {
  path: string;
  field: string;
  owner: string | null;
  label: string;
  /** SI, and as a person reads it. */
  value: number;
  shown: string;
  nominal: number;
  nominalShown: string;
  /** Who leads beyond it. */
  leaderBeyond: string;
  /** Share of the input's own spread that lies beyond. */
  beyondProbability: number;
}

/** How much knowing an input exactly would be worth, in score. */
export interface WorthOfMeasuring {
  path: string;
  field: string;
  owner: string | null;
  label: string;
  /** EVPPI less the permutation floor, in score. */
  worthScore: number;
  /** Share of draws in which knowing it would change the choice. */
  changedProbability: number;
  /** Whether a bench method can settle it. */
  measurable: boolean;
  instrument: string;
  method: string;
  minutes: number;
  /** How well it has to be known, as a person reads it: `±3 %`. */
  precision: string;
}

/** Share of the variance of the lead that a group of inputs carries, alone or together with others. */
export interface GroupTotalEffect {
  group: string;
  label: string;
  totalEffect: number;
}

/** A lesser change with what the draws say of it. */
export interface RatedChange extends LesserChange {
  /** Bands of what it gains, null without draws or where it does not apply. */
  gainBands: ChangeGainBands | null;
  /** Share of draws in which the drive of today passes every limit with it. */
  passProbability: number | null;
  /**
   * Its mean gain over that of the leader, each the score where all limits hold and else 0, cost left out of both where
   * that of the change is not known; null without draws, and where the leader gains nothing.
   */
  leaderGainRatio: number | null;
  /**
   * Share of draws in which every limit holds with it and it gains seven tenths or more of what the leader would; null
   * without draws, and where the leader is the drive of today.
   */
  replaceProbability: number | null;
}

/** Gains over the draws, each positive when the change helps. */
export interface ChangeGainBands {
  score: Band | null;
  runtimeS: Band | null;
  holdPowerW: Band | null;
  meanPackCurrentA: Band | null;
}

/** What would change the order. */
export interface SensitivityOutcome {
  leader: string;
  against: string;
  swings: InputSwing[];
  flips: InputFlip[];
  totalEffects: GroupTotalEffect[];
  measureFirst: WorthOfMeasuring[];
  /** Smallest change of the user's weights that changes the leader; null when none does. */
  weightChange: { leader: string; weights: Partial<Record<CriterionId, number>>; distance: number } | null;
}

/** What the verdict advises. */
export type VerdictKind =
  | 'redesign'
  | 'none of these'
  | 'measure first'
  | 'keep with a lesser change'
  | 'keep'
  | 'choose';

/** How sure the answer is; the sentence says of what the probability is. `probability` is null where no draws say anything. */
export interface Confidence {
  probability: number | null;
  word: SurenessWord;
  sentence: string;
}

/** The answer, how sure it is, why, and what would overturn it. */
export interface Verdict {
  kind: VerdictKind;
  /** Candidate it recommends, for `keep with a lesser change` the drive of today; null for `none of these`. */
  leader: string | null;
  /** The lesser change it recommends, one or two parts; empty for every other kind. */
  change: LesserChangeId[];
  /** The whole answer in one sentence. */
  sentence: string;
  confidence: Confidence;
  reasons: string[];
  overturnedBy: string[];
}

/** How the same draws look with other people's weights. */
export interface PointOfView {
  id: string;
  label: string;
  weights: Partial<Record<CriterionId, number>>;
  /** In the order of the candidates. */
  leadProbabilities: { candidate: string; probability: number }[];
}

/** What measurements of the baseline did to what was believed. */
export interface CalibrationOutcome {
  /** Figures in SI; `unit` is the one a person reads them in. `after` is null when no bands are given. */
  measured: { quantity: string; measured: number; before: Band; after: Band | null; unit: string }[];
  /** How many independent draws the ones that agree are worth; softening, if any, included. */
  effectiveSampleSize: number;
  /** Of how many: draws of the drive of today alone, made to be compared with what was measured. */
  comparedDrawCount: number;
  /** 1 = not tempered. */
  temper: number;
  /** Measured and modelled cannot both be right: smallest Σz² above the 99 % point. */
  contradiction: { smallestChiSquare: number; bound: number } | null;
  /** No bands after so few effective draws. */
  bandsGiven: boolean;
  /** What moved or narrowed most, of what all candidates share and of the drive of today; before and after. */
  moved: { path: string; label: string; beforeShown: string; afterShown: string }[];
}

/**
 * The run on one pack in the draws that last to the 10, 50 and 90 % point of the runtimes, on common times. `low` is
 * the run that ends first; each stays at its last voltage after its end.
 */
export interface RunDownBand {
  candidate: string;
  timesS: number[];
  lowVoltagesV: number[];
  middleVoltagesV: number[];
  highVoltagesV: number[];
  /** When each of the three ends. */
  endTimesS: [number, number, number];
}

/** Everything the draws add to an assessment. */
export interface Certainty {
  draws: number;
  generator: string;
  sobolInputs: number;
  candidates: Record<string, CandidateCertainty>;
  pairwise: PairwiseProbability[];
  /** Pairs that beat each other in 35–65 % of draws. */
  ties: [string, string][];
  pointsOfView: PointOfView[];
  sensitivity: SensitivityOutcome | null;
  calibration: CalibrationOutcome | null;
  /** Outcomes whose nominal figure lies outside or far from the middle of its band, worth a word. */
  nominalApart: { candidate: string; outcome: OutcomeName; nominal: number; median: number }[];
  runDownBands: RunDownBand[];
  /** From which weights acceptability comes: any, or those that keep the order of the user's own. */
  weightsDrawn: 'any' | 'in-order';
}
