/** Every lesser change that is tried on the drive of today, in the order in which they are tried. */
export const lesserChangeIds = [
  'mass-shaved',
  'rest-on-stop',
  'hold-latch',
  'slower-moves',
  'much-slower-moves',
  'dimmer-lights',
  'packs-in-turn',
  'packs-in-parallel',
  'assist-spring',
  'anchored-coil',
] as const;
/** Name of a lesser change in results and settings. */
export type LesserChangeId = (typeof lesserChangeIds)[number];

/** One figure of a change under the name that study.csv, candidates.csv, show.csv or packs.csv has for it. */
export interface ChangeSetting {
  field: string;
  /** SI, or the word that is written there. */
  value: number | string;
  /** SI unit of the value; empty for words and pure numbers. */
  unit: string;
  /** As a person writes it: `0.85 N·m/rad`. */
  shown: string;
}

/** What a change takes; assumed from the table of burdens unless the study knows better. */
export interface ChangeBurden {
  /** Added to what is carried; negative when it takes mass away. */
  massKg: number;
  /** null: a price that the study does not give. */
  costMoney: number | null;
  workTimeS: number;
  /** Where the three figures come from. */
  basis: string;
}

/** The figures of the feature that a change is judged by. SI; null = does not occur or not judged. */
export interface ChangeFigures {
  /** On what is connected at once: one pack, or two in parallel. */
  runtimeS: number | null;
  /** With all packs that are carried, one after another. */
  playingTimeS: number | null;
  /** Time-weighted over the cues that hold today; one that rests now counts with what the resting drive draws. */
  holdPowerW: number;
  meanPackCurrentA: number | null;
  peakPackCurrentA: number | null;
  torqueMarginRatio: number | null;
  /** Largest hold effort as a share of stall effort. */
  holdEffortRatio: number | null;
  windingTemperatureK: number | null;
  cueFidelityRatio: number | null;
  bodyMassKg: number | null;
  /** At the stop after a power cut; 0 when the feature stays or only sinks. */
  fallEnergyJ: number;
  /** 0…1; where the price of any change is not known, with cost worth what it is worth before. */
  score: number;
}

/** Better by how much: every figure is positive when the change helps. null where before or after is not known. */
export interface ChangeGain {
  runtimeS: number | null;
  playingTimeS: number | null;
  /** Saved. */
  holdPowerW: number;
  /** Saved. */
  meanPackCurrentA: number | null;
  torqueMarginRatio: number | null;
  /** Taken off. */
  holdEffortRatio: number | null;
  /** Cooler by so much. */
  windingTemperatureK: number | null;
  score: number;
}

/** One rung of the ladder: a small change of the feature as it is, solved in the same model. */
export interface LesserChange {
  id: LesserChangeId | 'pair';
  /** The changes it consists of: itself, or the two of a pair. */
  parts: LesserChangeId[];
  /** In plain words: `Assist spring on the hinge`. */
  title: string;
  /** What to do, with the numbers a maker can act on; one sentence each. */
  actions: string[];
  settings: ChangeSetting[];
  burden: ChangeBurden;
  /** What else it does, wanted or not; one sentence each. */
  sideEffects: string[];
  after: ChangeFigures;
  gain: ChangeGain;
  /** The gain scaled to 100 g added or taken away; null for a change that weighs nothing. */
  gainPerHundredGrams: ChangeGain | null;
  /** Whether the drive of today passes every limit with it; null: something could not be judged. */
  passes: boolean | null;
}

/** A change that makes no sense here, and why. */
export interface ChangeLeftOut {
  id: LesserChangeId;
  reason: string;
}

/** The ladder of lesser changes, the most useful first. */
export interface LesserChanges {
  /** The drive of today. */
  candidate: string;
  before: ChangeFigures;
  passesBefore: boolean | null;
  /** Those that make it pass first, then by score, runtime and playing time gained. */
  ladder: LesserChange[];
  /** The best two of the three best that go together; null when fewer than two help. */
  bestPair: LesserChange | null;
  leftOut: ChangeLeftOut[];
}
