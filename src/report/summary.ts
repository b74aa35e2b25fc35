import type { Assessment, Caution } from '../assess/assessment.js';
import { blanksOf, blankWords } from '../assess/blanks.js';
import { countText } from '../assess/figures.js';
import { driveTypes } from '../drives/registry.js';
import type { TriedChange } from '../study/study.js';
import {
  bandOf,
  certaintyOf,
  labelOf,
  type ReportContext,
  type ReportWishes,
  reportContext,
  runtimeBandOf,
} from './context.js';
import { packsForTheDay } from './tables/ranking-table.js';
import type { Templates } from './template/template-error.js';
import { banded, probability } from './words/bands.js';
import { confidenceWords } from './words/confidence.js';
import { counted, fixed, readings } from './words/figures.js';
import { nextMeasurement } from './words/next-measurement.js';
import { limitsSummary } from './words/outcome-words.js';

/** The report has them all. */
const mostReasons = 3;

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
  /** How many pass, or else fail or cannot be judged, where there is little room: `✓ 7 limits`, `paper 61 %`. */
  limitsInShort: string;
  /** Figures as written, in the units of `ReportSummary.units`; with draws a median and its 10–90 %. */
  runtime: string;
  /** Packs that the day takes; empty without a day. */
  packs: string;
  mass: string;
  holding: string;
  cost: string;
  score: string;
  /** Share of draws in which it leads; empty without draws. */
  leads: string;
}

/** The answer in few lines; for a terminal, a mail, a commit message. */
export interface ReportSummary {
  project: string;
  question: string;
  /** What was tried instead of what the files say: `feature.mass = 700 g instead of 560 g`. */
  whatIf: string[];
  answer: string;
  /** How sure the answer is; empty where nobody can say. */
  confidence: string;
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
  /** How many of those are severe. */
  furtherSevereCount: number;
  /** Blanks that keep a candidate from being judged. */
  fillInFirst: string[];
  nextMeasurement: string;
  figures: string;
}

/** Puts the answer into few lines; see `buildReport` for the parameters. */
export function summarise(
  source: Assessment,
  templates: Templates,
  date: string,
  wishes: ReportWishes = {},
): ReportSummary {
  const context = reportContext(source, templates, date, wishes);
  const { assessment } = context;
  const raised = assessment.cautions.filter((caution) => caution.figure !== '' || caution.candidate !== null);
  const worst = worstCaution(raised);
  const next = nextMeasurement(context);
  const { verdict } = assessment;
  return {
    project: assessment.study.about.project,
    question: assessment.study.about.question,
    whatIf: (assessment.study.tried ?? []).map(triedText),
    answer: verdict.sentence,
    confidence: confidenceText(context),
    reasons: verdict.reasons.slice(0, mostReasons),
    rows: context.candidates.map((candidate) => summaryRow(context, candidate)),
    units: {
      runtime: 'min',
      mass: context.units.mass.unit,
      holding: 'W',
      cost: context.currency === '' ? 'cost' : context.currency,
    },
    caution: worst && {
      severity: worst.severity,
      about: worst.candidate === null ? '' : labelOf(context, worst.candidate),
      figure: worst.figure,
      text: worst.text,
      action: worst.action,
    },
    furtherCautions: Math.max(0, raised.length - 1),
    furtherSevereCount: raised.filter((one) => one !== worst && one.severity === 'severe').length,
    fillInFirst: blanksOf(assessment).map((blank) => `${blankWords(blank)}.`),
    nextMeasurement: next
      ? context.phrases('measure-next', {
          label: next.owner === '' ? next.label : `${next.label} (${next.owner})`,
          why: next.why.replace(/\.$/, ''),
          instrument: next.instrument,
          minutes: fixed(next.minutes, 0),
        })
      : '',
    figures:
      context.phrases('figures-line', {
        given: counted(assessment.figuresGiven, 'figure'),
        assumed: String(assessment.figuresAssumed),
      }) + drawsText(context),
  };
}

/** How sure it is, and why; without draws there is nothing to be sure by. */
function confidenceText({ assessment }: ReportContext): string {
  return assessment.certainty === null ? '' : confidenceWords(assessment.verdict.confidence);
}

function triedText({ item, from, to }: TriedChange): string {
  const shown = (text: string) => (text === '' ? 'blank' : text);
  return `${item} = ${shown(to)} instead of ${shown(from)}`;
}

function drawsText({ assessment, phrases }: ReportContext): string {
  if (assessment.certainty === null) return '';
  return phrases('draws-line', { draws: countText(assessment.certainty.draws) });
}

function worstCaution(raised: Caution[]): Caution | null {
  const order = ['severe', 'caution', 'note'];
  return [...raised].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))[0] ?? null;
}

function summaryRow(context: ReportContext, candidate: ReportContext['candidates'][number]): SummaryRow {
  const { nominal } = candidate;
  const certainty = certaintyOf(context, candidate);
  const runtime = banded(runtimeBandOf(candidate), nominal.runtimeS, 'minutes');
  return {
    rank: String(candidate.rank),
    candidate: candidate.label,
    type: driveTypes[candidate.type].label,
    isLeader: candidate === context.leader,
    isBaseline: candidate.isBaseline,
    passes: candidate.passes,
    limits: certainty?.passesOnPaper
      ? `passes on paper, in ${probability(certainty.passProbability)}`
      : limitsSummary(candidate).text,
    limitsInShort: limitsInShort(context, candidate),
    runtime,
    packs: context.assessment.day === null ? '' : packsForTheDay(context, candidate),
    mass: context.units.mass.show(nominal.bodyMassKg),
    holding: readings.wattsInColumn.show(bandOf(candidate, 'holdPowerW')?.median ?? nominal.holdPowerW),
    cost: readings.money.show(nominal.cost),
    score: readings.ratio.show(candidate.score),
    leads: certainty === null ? '' : probability(certainty.leadProbability),
  };
}

function limitsInShort(context: ReportContext, candidate: ReportContext['candidates'][number]): string {
  const certainty = certaintyOf(context, candidate);
  if (certainty?.passesOnPaper) return `paper ${probability(certainty.passProbability)}`;
  const { limits, passes } = candidate;
  if (limits.length === 0) return limitsSummary(candidate).text;
  const sign = passes === null ? '?' : passes ? '✓' : '✗';
  return `${sign} ${counted(limits.filter((limit) => limit.passes === passes).length, 'limit')}`;
}
