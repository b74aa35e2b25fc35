import type { Assessment, Caution } from '../assess/assessment.js';
import { driveTypes } from '../drives/registry.js';
import { labelOf, type ReportContext, reportContext } from './context.js';
import type { Templates } from './template/template-error.js';
import { counted, fixed, readings } from './words/figures.js';
import { limitsSummary } from './words/outcome-words.js';

/** One line of the short ranking. */
export interface SummaryRow {
  rank: string;
  candidate: string;
  type: string;
  isLeader: boolean;
  isBaseline: boolean;
  /** null: not every limit could be judged. */
  passes: boolean | null;
  limits: string;
  /** Figures as written, in the units of `ReportSummary.units`. */
  runtime: string;
  mass: string;
  holding: string;
  cost: string;
  score: string;
}

/** The answer in few lines; for a terminal, a mail, a commit message. */
export interface ReportSummary {
  project: string;
  question: string;
  answer: string;
  reasons: string[];
  rows: SummaryRow[];
  units: { runtime: string; mass: string; holding: string; cost: string };
  /** The most severe caution, with who it concerns; null when none was raised. */
  caution: {
    severity: Caution['severity'];
    about: string;
    figure: string;
    text: string;
    action: string;
  } | null;
  /** How many more cautions stand in the report. */
  furtherCautions: number;
  nextMeasurement: string;
  figures: string;
}

/** Puts the answer into few lines; see `buildReport` for the parameters. */
export function summarise(source: Assessment, templates: Templates, date: string): ReportSummary {
  const context = reportContext(source, templates, date);
  const { assessment } = context;
  const raised = assessment.cautions.filter((caution) => caution.figure !== '' || caution.candidate !== null);
  const worst = worstCaution(raised);
  const next = assessment.nextMeasurements[0];
  return {
    project: assessment.study.about.project,
    question: assessment.study.about.question,
    answer: assessment.answer.sentence,
    reasons: assessment.answer.reasons,
    rows: context.candidates.map((candidate) => summaryRow(context, candidate)),
    units: { runtime: 'min', mass: 'g', holding: 'W', cost: context.currency },
    caution: worst && {
      severity: worst.severity,
      about: worst.candidate === null ? '' : labelOf(context, worst.candidate),
      figure: worst.figure,
      text: worst.text,
      action: worst.action,
    },
    furtherCautions: Math.max(0, raised.length - 1),
    nextMeasurement: next
      ? context.phrases('measure-next', {
          label: next.label,
          why: next.why,
          instrument: next.instrument,
          minutes: fixed(next.minutes, 0),
        })
      : '',
    figures: context.phrases('figures-line', {
      given: counted(assessment.figuresGiven, 'figure'),
      assumed: String(assessment.figuresAssumed),
    }),
  };
}

function worstCaution(raised: Caution[]): Caution | null {
  const order = ['severe', 'caution', 'note'];
  return [...raised].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))[0] ?? null;
}

function summaryRow(context: ReportContext, candidate: ReportContext['candidates'][number]): SummaryRow {
  const { nominal } = candidate;
  return {
    rank: String(candidate.rank),
    candidate: candidate.label,
    type: driveTypes[candidate.type].label,
    isLeader: candidate === context.leader,
    isBaseline: candidate.isBaseline,
    passes: candidate.passes,
    limits: limitsSummary(candidate).text,
    runtime: readings.minutes.show(nominal.runtimeS),
    mass: readings.grams.show(nominal.bodyMassKg),
    holding: readings.wattsInColumn.show(nominal.holdPowerW),
    cost: readings.money.show(nominal.cost),
    score: readings.ratio.show(candidate.score),
  };
}
