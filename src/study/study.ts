import type { DriveKind, DriveSheet, TypicalFigures } from '../drives/sheet.js';
import type { Criterion, Measurement } from './choosing.js';
import type { Air, Carrier, Feature, Space } from './feature.js';
import type { Provenance } from './provenance.js';
import type { DayBlock, Show } from './show.js';
import type { Load, Pack, Wiring } from './supply.js';

/** What the report and the archive say about the study. Texts as written. */
export interface About {
  question: string;
  project: string;
  preparedBy: string;
  preparedFor: string;
  /** ISO date; empty when not given. */
  date: string;
  currency: string;
}

/** One drive that could do the job. */
export interface Candidate {
  id: string;
  kind: DriveKind;
  label: string;
  sheet: DriveSheet;
  typical: TypicalFigures;
  /** Columns named `my_…`, kept and printed, never read. */
  extra: Record<string, string>;
  /** Line in the candidates file. */
  line: number;
  file: string;
}

/** A value that was tried instead of what the files say, both as written; empty where blank. */
export interface TriedChange {
  item: string;
  from: string;
  to: string;
}

/** A checked study in SI units: every number here is usable as it stands. */
export interface Study {
  about: About;
  feature: Feature;
  carrier: Carrier;
  air: Air;
  space: Space;
  wiring: Wiring;
  packs: Pack[];
  /** The chosen one of `packs`. */
  pack: Pack;
  packsCarriedCount: number;
  packTemperatureK: number;
  loads: Load[];
  show: Show;
  candidates: Candidate[];
  /** The candidate that exists today; null when there is none. */
  baselineId: string | null;
  targetRuntimeS: number | null;
  eventsPerYearCount: number;
  hourPriceMoney: number;
  criteria: Criterion[];
  day: DayBlock[];
  measured: Measurement[];
  drawsCount: number;
  seed: number;
  provenance: Provenance[];
  /** What was tried; left out where the study is taken as it stands in the files. */
  tried?: TriedChange[];
  /** Figures far outside what is usual, which may be slips of the unit; left out where there are none. */
  unlikely?: UnlikelyFigure[];
}

/** A figure that was read as written and that hardly can be meant. */
export interface UnlikelyFigure {
  /** Where it stands: `packs.csv:2 capacity`. */
  place: string;
  /** What it is read as, and what is usual. */
  message: string;
}
