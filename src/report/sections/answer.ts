import type { MeasurementAdvice } from '../../assess/assessment.js';
import { runtimeChart } from '../charts/runtime-chart.js';
import { labelOf, type ReportContext } from '../context.js';
import type { Block } from '../document.js';
import { rankingTable } from '../tables/ranking-table.js';
import type { Filling, Values } from '../template/fill-template.js';
import { plain } from '../template/inline.js';
import { capitalised, counted, duration, fixed, joined, sentence } from '../words/figures.js';
import { aboutValues } from './about.js';

/** Page one: the question, the answer, its reasons, the ranking, what to measure next. */
export function answerSection(context: ReportContext): Filling[] {
  const { assessment, candidates } = context;
  const { answer, figuresGiven, figuresAssumed, study } = assessment;
  const figures = figuresGiven + figuresAssumed;
  const values: Values = {
    ...aboutValues(context),
    answer: answer.sentence,
    reasons: { blocks: reasons(answer.reasons) },
    ranking: { blocks: [rankingTable(context)] },
    has_candidates: candidates.length > 0,
    candidate_count: counted(candidates.length, 'candidate'),
    has_target: study.targetRuntimeS !== null,
    target: study.targetRuntimeS === null ? '' : duration(study.targetRuntimeS),
    pack: study.pack.label || study.pack.id,
    figures_given: String(figuresGiven),
    figures_assumed: String(figuresAssumed),
    given_share: figures === 0 ? '' : `${fixed((figuresGiven / figures) * 100, 0)}${joined}%`,
    ...nextMeasurement(context, assessment.nextMeasurements[0]),
  };
  return [{ values, charts: { 'runtime-against-target': runtimeChart(context) } }];
}

function reasons(texts: string[]): Block[] {
  return texts.length === 0 ? [] : [{ kind: 'list', ordered: true, items: texts.map(plain) }];
}

function nextMeasurement(context: ReportContext, advice: MeasurementAdvice | undefined): Values {
  const owner = advice?.candidate ? labelOf(context, advice.candidate) : '';
  return {
    measure_next: advice !== undefined,
    measure_label: advice?.label ?? '',
    measure_owner: owner !== '' && !advice?.label.includes(owner) ? owner : '',
    measure_why: sentence(advice?.why ?? ''),
    measure_method: sentence(advice?.method ?? ''),
    measure_instrument: capitalised(advice?.instrument ?? ''),
    measure_minutes: advice ? `${fixed(advice.minutes, 0)}${joined}min` : '',
  };
}
