import type { Assessment } from '../assess/assessment.js';
import type { Band } from '../assess/certainty.js';
import { amperes, celsius, mass, minutes, percent, plain, watts } from '../assess/figures.js';
import type { OutcomeName } from '../simulate/ensemble/ensemble.js';
import type { NominalOutcome } from '../simulate/outcome.js';

/** The part of a candidate's results that records are compared by; older records may lack a figure. */
export interface RecordedCandidate {
  id: string;
  label: string;
  rank: number;
  passes: boolean | null;
  score: number;
  nominal: Partial<NominalOutcome>;
  /** Bands over the draws, after calibration; empty where none are given. */
  uncertain: Partial<Record<OutcomeName, Band>>;
  /** Share of draws in which it leads; null where no bands are given. */
  leadProbability: number | null;
  /** Packs that the day takes; null without a day, or where no number of packs does. */
  packsForDayCount: number | null;
}

/** The part of an assessment, or of a results.json of any age, that records are compared by; in rank order. */
export function recordedCandidates({ candidates, certainty, day }: RecordedAssessment): RecordedCandidate[] {
  return candidates
    .map(({ id, label, rank, passes, score, nominal, uncertain }) => ({
      id,
      label,
      rank,
      passes,
      score,
      nominal,
      uncertain: uncertain ?? {},
      leadProbability: certainty?.candidates[id]?.leadProbability ?? null,
      packsForDayCount: packsForDay(day?.plans.find(({ candidate }) => candidate === id)),
    }))
    .sort((a, b) => a.rank - b.rank);
}

/** As the ranking counts them: in nine draws in ten, or by the nominal figures where there are no draws. */
function packsForDay(plan: RecordedPlan | undefined): number | null {
  if (plan === undefined) return null;
  const isDrawn = typeof plan.doneProbability === 'number';
  return (isDrawn ? plan.packsSureCount : plan.packsNeededCount) ?? null;
}

interface RecordedPlan {
  candidate: string;
  packsNeededCount: number | null;
  doneProbability?: number | null;
  packsSureCount?: number | null;
}

/** What is read of results; older ones lack what was not written then. */
export interface RecordedAssessment {
  candidates: (Omit<RecordedCandidate, 'uncertain' | 'leadProbability' | 'packsForDayCount'> &
    Partial<Pick<Assessment['candidates'][number], 'uncertain'>>)[];
  certainty?: { candidates: Record<string, { leadProbability: number | null }> } | null;
  day?: { plans: RecordedPlan[] } | null;
}

/** A figure by which results are compared, as the report states it: the median where bands are given. */
export interface KeyFigure {
  name: string;
  read(candidate: RecordedCandidate): number | null;
  /** With its unit. */
  show(value: number): string;
  /** A difference of two, with its unit and without its sign. */
  showSize(difference: number): string;
}

const nominalFigure = (
  name: string,
  key: keyof NominalOutcome,
  show: KeyFigure['show'],
  showSize = show,
): KeyFigure => ({ name, read: ({ nominal }) => finite(nominal[key]), show, showSize });

const drawnFigure = (
  name: string,
  key: keyof NominalOutcome & OutcomeName,
  show: KeyFigure['show'],
  showSize = show,
): KeyFigure => ({
  name,
  read: ({ nominal, uncertain }) => finite(uncertain[key]?.median ?? nominal[key]),
  show,
  showSize,
});

const fixed = (digits: number, unit: string, factor = 1) => {
  return (difference: number) => `${(difference * factor).toFixed(digits)} ${unit}`;
};

/** The figures by which results are compared, in the order in which they are told. */
export const keyFigures = {
  runtime: drawnFigure('runtime', 'runtimeS', minutes, fixed(1, 'min', 1 / 60)),
  holding: drawnFigure('power while holding', 'holdPowerW', watts, fixed(2, 'W')),
  packs: {
    name: 'packs for the day',
    read: ({ packsForDayCount }) => packsForDayCount,
    show: plain,
    showSize: plain,
  },
  mass: nominalFigure('mass on the body', 'bodyMassKg', mass, fixed(0, 'g', 1000)),
  peak: drawnFigure('peak current', 'peakPackCurrentA', amperes, fixed(2, 'A')),
  case: drawnFigure('case temperature', 'caseTemperatureK', celsius, fixed(1, 'K')),
  cost: nominalFigure('cost', 'cost', plain),
  score: {
    name: 'score',
    read: ({ score }) => finite(score),
    show: (score) => score.toFixed(3),
    showSize: (score) => score.toFixed(3),
  },
  leads: {
    name: 'leads',
    read: ({ leadProbability }) => leadProbability,
    show: percent,
    showSize: percent,
  },
} as const satisfies Record<string, KeyFigure>;

/** The same as a list. */
export const allKeyFigures: readonly KeyFigure[] = Object.values(keyFigures);

function finite(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

/** Whether two figures differ by more than the last digits of a computer. */
export function differs(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a !== b;
  return Math.abs(a - b) > 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-9);
}

/** `+12 min`, `−0.2 W`; `0` where nothing moved that shows. */
export function signed(difference: number, { showSize }: KeyFigure): string {
  const size = showSize(Math.abs(difference));
  if (Number.parseFloat(size) === 0) return '0';
  return `${difference < 0 ? '−' : '+'}${size}`;
}
