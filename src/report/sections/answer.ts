import { countText } from '../../assess/figures.js';
import { runtimeChart } from '../charts/runtime-chart.js';
import type { ReportContext } from '../context.js';
import type { Block, Inline } from '../document.js';
import { rankingTable, roomyRows } from '../tables/ranking-table.js';
import type { Filling, Values } from '../template/fill-template.js';
import { plain } from '../template/inline.js';
import { confidenceWords } from '../words/confidence.js';
import { capitalised, counted, duration, fixed, joined, sentence } from '../words/figures.js';
import { nextMeasurement } from '../words/next-measurement.js';
import { surerChangeWords } from '../words/surer-change.js';
import { aboutValues } from './about.js';

/** Page one: the question, the verdict, how sure it is and why, the ranking, what to measure next. */
export function answerSection(context: ReportContext): Filling[] {
  const { assessment, candidates } = context;
  const { verdict, certainty, figuresGiven, figuresAssumed, study } = assessment;
  const figures = figuresGiven + figuresAssumed;
  const values: Values = {
    ...aboutValues(context),
    prepared_line: preparedLine(context),
    answer: verdict.sentence,
    has_draws: certainty !== null,
    draws: certainty === null ? '' : countText(certainty.draws),
    confidence: confidenceWords(verdict.confidence),
    reasons: { blocks: itemList(reasonsTold(context)) },
    overturned: { blocks: smallList(verdict.overturnedBy.slice(0, mostOverturning(candidates.length))) },
    ranking: { blocks: [rankingTable(context)] },
    has_candidates: candidates.length > 0,
    candidate_count: counted(candidates.length, 'candidate'),
    has_target: study.targetRuntimeS !== null,
    target: study.targetRuntimeS === null ? '' : duration(study.targetRuntimeS),
    pack: study.pack.label || study.pack.id,
    figures_given: String(figuresGiven),
    figures_assumed: String(figuresAssumed),
    given_share: figures === 0 ? '' : `${fixed((figuresGiven / figures) * 100, 0)}${joined}%`,
    unlikely: unlikelyLine(context),
    ...measureValues(context),
  };
  return [{ values, charts: { 'runtime-against-target': runtimeChart(context) } }];
}

/** Reasons, and what would overturn the verdict, are told in full behind; page one has room for so many. */
const mostReasons = 3;
const mostOverturning = (candidateCount: number) => (candidateCount > roomyRows ? 1 : 2);

/** The first reasons; behind the first, what would be surer than the advised change. */
function reasonsTold(context: ReportContext): string[] {
  const [first, ...others] = context.assessment.verdict.reasons;
  const surer = surerChangeWords(context);
  return [first, surer === '' ? undefined : surer, ...others]
    .filter((reason) => reason !== undefined)
    .slice(0, mostReasons);
}

/** When and by whom, as far as it is said; ends where the next part begins. */
function preparedLine(context: ReportContext): string {
  const { date, prepared_by: by } = aboutValues(context);
  const parts = [date, by === '' ? '' : context.phrases('prepared-by', { by: String(by) })];
  return parts.map((part) => (part === '' ? '' : `${part} · `)).join('');
}

/** So many questioned figures are told on page one. */
const mostUnlikely = 2;

/** What the warnings about the files question, for who reads only the report; empty when nothing is. */
function unlikelyLine({ assessment: { study }, phrases }: ReportContext): string {
  const unlikely = study.unlikely ?? [];
  if (unlikely.length === 0) return '';
  const each = unlikely.slice(0, mostUnlikely).map(({ place, message }) => `${place}: ${message}`);
  const rest = unlikely.length - each.length;
  return phrases(unlikely.length === 1 ? 'unlikely-figure' : 'unlikely-figures', {
    count: String(unlikely.length),
    each: [...each, ...(rest > 0 ? [phrases('unlikely-more', { count: String(rest) })] : [])].join('; '),
  });
}

function itemList(texts: string[]): Block[] {
  return texts.length === 0 ? [] : [{ kind: 'list', ordered: true, items: texts.map(plain) }];
}

function smallList(texts: string[]): Block[] {
  const items = texts.map((text): Inline => plain(sentence(text)));
  return items.length === 0 ? [] : [{ kind: 'list', ordered: false, items, style: 'small' }];
}

function measureValues(context: ReportContext): Values {
  const next = nextMeasurement(context);
  return {
    measure_next: next !== null,
    measure_label: next?.label ?? '',
    measure_owner: next?.owner ?? '',
    measure_why: sentence(next?.why ?? ''),
    measure_method: sentence(next?.method ?? ''),
    measure_instrument: capitalised(next?.instrument ?? ''),
    measure_minutes: next ? `${fixed(next.minutes, 0)}${joined}min` : '',
    measure_precision: next?.precision ?? '',
    measure_goes_into: next?.goesInto ?? '',
  };
}
