import { countText } from '../../assess/figures.js';
import { acceptabilityChart, acceptabilityFinding } from '../charts/acceptability-chart.js';
import { breakEvenChart, valueParts } from '../charts/break-even-chart.js';
import { nominalLead, showsTurn, swingsChart } from '../charts/swings-chart.js';
import { labelOf, type ReportContext } from '../context.js';
import type { Block } from '../document.js';
import { calibrationTable } from '../tables/calibration-table.js';
import { flipTable, measureTable, viewsTable, weightWords } from '../tables/order-tables.js';
import type { ChartContent, Filling, Values } from '../template/fill-template.js';
import { plain } from '../template/inline.js';
import { probability } from '../words/bands.js';
import { fixed, sentence } from '../words/figures.js';
import { present } from './present.js';

/** What would change the order; no section when neither draws nor a break-even tell anything. */
export function orderSection(context: ReportContext): Filling[] {
  const { certainty, breakEven, verdict, nextMeasurements } = context.assessment;
  if (certainty === null && breakEven === null) return [];
  const charts: Record<string, ChartContent | null> = {
    swings: swingsChart(context),
    'rank-acceptability': acceptabilityChart(context),
    'break-even': context.leader === null ? null : breakEvenChart(context),
  };
  const isPaidBy = breakEven !== null && context.leader !== null;
  const values: Values = {
    overturned: { blocks: sentenceList(verdict.overturnedBy) },
    further_reasons: { blocks: sentenceList(verdict.reasons.slice(3)) },
    has_swings: charts.swings !== null,
    lead: fixed(nominalLead(context), 2),
    against: certainty?.sensitivity ? labelOf(context, certainty.sensitivity.against) : '',
    turn_beyond: charts.swings !== null && !showsTurn(context),
    flips: { blocks: flipTable(context) },
    has_flips: (certainty?.sensitivity?.flips.length ?? 0) > 0,
    measurements: { blocks: certainty === null ? [] : measureTable(context, nextMeasurements) },
    groups: groupWords(context),
    has_acceptability: charts['rank-acceptability'] !== null,
    acceptability_finding: acceptabilityFinding(context),
    ties: tieWords(context),
    views: { blocks: viewsTable(context) },
    weight_change: weightChangeWords(context),
    own_weights: ownWeightWords(context),
    calibration: { blocks: calibrationTable(context) },
    calibration_words: calibrationWords(context),
    has_break_even: isPaidBy,
    has_break_even_chart: charts['break-even'] !== null,
    break_even:
      breakEven === null || context.leader === null
        ? ''
        : context.phrases('break-even-of', { label: context.leader.label, sentence: breakEven.sentence }),
    value_parts: valueParts(context),
  };
  return [{ values, charts: present(charts) }];
}

function sentenceList(texts: string[]): Block[] {
  if (texts.length === 0) return [];
  return [{ kind: 'list', ordered: false, items: texts.map((text) => plain(sentence(text))) }];
}

/** Shares of the spread are told in steps of this size: from so few draws they are good to about that. */
const tellableShare = 0.05;

/** Groups of inputs by how much of the spread of the lead they carry. */
function groupWords(context: ReportContext): string {
  const groups = context.assessment.certainty?.sensitivity?.totalEffects ?? [];
  const told = groups
    .filter(({ totalEffect }) => totalEffect >= tellableShare)
    .sort((a, b) => b.totalEffect - a.totalEffect)
    .slice(0, 5)
    .map(({ label, totalEffect }) => {
      const share = tellableShare * Math.round(Math.min(1, totalEffect) / tellableShare);
      return `${label} ${probability(share)}`;
    });
  return told.join(', ');
}

function tieWords(context: ReportContext): string {
  const ties = context.assessment.certainty?.ties ?? [];
  if (ties.length === 0) return '';
  const pairs = ties.map(([one, other]) => `${labelOf(context, one)} and ${labelOf(context, other)}`);
  return context.phrases('ties', { pairs: pairs.join('; ') });
}

function weightChangeWords(context: ReportContext): string {
  const sensitivity = context.assessment.certainty?.sensitivity;
  if (!sensitivity) return '';
  const { weightChange } = sensitivity;
  if (weightChange === null) return context.phrases('no-weight-change');
  return context.phrases('weight-change', {
    leader: labelOf(context, weightChange.leader),
    weights: weightWords(weightChange.weights),
  });
}

/** The user's own weights, the weightiest first. */
function ownWeightWords({ assessment: { study } }: ReportContext): string {
  const weighted = study.criteria.filter(({ weightScore }) => weightScore > 0);
  return weightWords(Object.fromEntries(weighted.map(({ id, weightScore }) => [id, weightScore])));
}

function calibrationWords(context: ReportContext): string {
  const calibration = context.assessment.certainty?.calibration;
  if (!calibration) return '';
  const { contradiction, bandsGiven, effectiveSampleSize, comparedDrawCount, temper } = calibration;
  const parts = [
    context.phrases('calibration-sample', {
      count: countText(Math.round(effectiveSampleSize)),
      compared: countText(comparedDrawCount),
    }),
    ...(temper < 1 ? [context.phrases('calibration-tempered', { share: fixed(temper, 2) })] : []),
    ...(bandsGiven ? [] : [context.phrases('calibration-no-bands')]),
    ...(contradiction
      ? [
          context.phrases('calibration-contradiction', {
            found: fixed(contradiction.smallestChiSquare, 1),
            bound: fixed(contradiction.bound, 1),
          }),
        ]
      : []),
  ];
  return parts.join(' ');
}
