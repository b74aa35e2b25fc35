import type { Assessment, CandidateAssessment } from '../assess/assessment.js';
import type { Band, CandidateCertainty } from '../assess/certainty.js';
import type { DayPlan } from '../assess/day/day-plan.js';
import type { UnitSystem } from '../quantity/display-units.js';
import type { OutcomeName } from '../simulate/ensemble/ensemble.js';
import type { ReportImage } from './document.js';
import { type Phrases, readPhrases } from './template/phrases.js';
import type { Templates } from './template/template-error.js';
import { cleanTree } from './words/clean.js';
import { type DisplayReadings, displayReadings } from './words/figures.js';
import { restatedAssessment } from './words/restated.js';

/** Whether a candidate leads, exists today, or is one of the others; decides its line and fill in charts. */
export type Role = 'leader' | 'baseline' | 'other';

/** What a report may have beside what is known. */
export interface ReportWishes {
  /** Pictures for the letterhead by the name of their file. */
  images?: Record<string, ReportImage>;
  /** Units in which what is mechanical or warm is read; metric when not said. */
  units?: UnitSystem;
}

/** What every section of the report is made from. */
export interface ReportContext {
  assessment: Assessment;
  templates: Templates;
  images: Record<string, ReportImage>;
  /** Units of what is mechanical or warm. */
  units: DisplayReadings;
  system: UnitSystem;
  phrases: Phrases;
  /** In rank order. */
  candidates: CandidateAssessment[];
  leader: CandidateAssessment | null;
  baseline: CandidateAssessment | null;
  /** The one or two candidates that charts follow through time: who leads, and what exists today. */
  focus: CandidateAssessment[];
  currency: string;
  /** Date printed on the report, ISO. */
  date: string;
}

/** Assessments as they are told in each system of units: every rendering of one starts from the same. */
const told = new WeakMap<Assessment, Partial<Record<UnitSystem, Assessment>>>();

function toldIn(source: Assessment, system: UnitSystem): Assessment {
  const known = told.get(source) ?? {};
  told.set(source, known);
  known[system] ??= restatedAssessment(cleanTree(source), system);
  return known[system];
}

/**
 * Prepares an assessment for the pages: texts from files are cleaned, equal labels told apart by their ids.
 *
 * @param date used when the study names none; ISO
 */
export function reportContext(
  source: Assessment,
  templates: Templates,
  date: string,
  { images = {}, units: system = 'metric' }: ReportWishes = {},
): ReportContext {
  const assessment = toldIn(source, system);
  const candidates = withDistinctLabels(assessment.candidates);
  const byId = (id: string | null) => candidates.find((candidate) => candidate.id === id) ?? null;
  const [leader, baseline] = [byId(assessment.leader), byId(assessment.baseline)];
  const first = leader ?? candidates[0] ?? null;
  const second = baseline && baseline !== first ? baseline : candidates.find((other) => other !== first);
  return {
    assessment,
    templates,
    images,
    units: displayReadings[system],
    system,
    phrases: readPhrases(templates),
    candidates,
    leader,
    baseline,
    focus: [first, second ?? null].filter((candidate) => candidate !== null),
    currency: assessment.study.about.currency,
    date: assessment.study.about.date || date,
  };
}

/** Role of a candidate in charts; the leader comes before the baseline when one is both. */
export function roleOf(context: ReportContext, candidate: CandidateAssessment): Role {
  if (candidate === (context.leader ?? context.focus[0])) return 'leader';
  return candidate === context.baseline ? 'baseline' : 'other';
}

/** Band of an outcome over the draws; null without draws, or where it never occurs. */
export function bandOf(candidate: CandidateAssessment, outcome: OutcomeName): Band | null {
  return candidate.uncertain[outcome] ?? null;
}

/** A range that stands for fewer draws than this would pass for what the candidate does. */
const leastRunningShare = 0.5;

/**
 * Band of the runtime; null without draws, and where by the nominal figures and in most draws there is no run: what
 * runs in one draw of a hundred has no runtime.
 */
export function runtimeBandOf(candidate: CandidateAssessment): Band | null {
  const band = bandOf(candidate, 'runtimeS');
  const runs = candidate.nominal.runtimeS !== null || (band?.occursFraction ?? 0) >= leastRunningShare;
  return runs ? band : null;
}

/** What the draws say about one candidate; null without draws. */
export function certaintyOf(context: ReportContext, { id }: CandidateAssessment): CandidateCertainty | null {
  return context.assessment.certainty?.candidates[id] ?? null;
}

/** The event day with one candidate; null without a day. */
export function planOf(context: ReportContext, { id }: CandidateAssessment): DayPlan | null {
  return context.assessment.day?.plans.find((plan) => plan.candidate === id) ?? null;
}

/** Label of a candidate by its id; the id itself when nobody has it. */
export function labelOf(context: ReportContext, id: string): string {
  return context.candidates.find((candidate) => candidate.id === id)?.label ?? id;
}

function withDistinctLabels(candidates: CandidateAssessment[]): CandidateAssessment[] {
  const count = new Map<string, number>();
  for (const { label } of candidates) count.set(label, (count.get(label) ?? 0) + 1);
  return candidates.map((candidate) =>
    count.get(candidate.label) === 1
      ? candidate
      : { ...candidate, label: `${candidate.label} (${candidate.id})` },
  );
}

/** The label, with a word for the drive that exists today unless it says so itself. */
export function markedLabel(candidate: CandidateAssessment): string {
  const { isBaseline, label } = candidate;
  return isBaseline && !/as built|today|now/i.test(label) ? `${label} · as built` : label;
}
