import { listed } from '../../assess/figures.js';
import { crushChart } from '../charts/crush-chart.js';
import { pushChart } from '../charts/push-chart.js';
import type { ReportContext } from '../context.js';
import { contactTable, fallWords, powerCutsTable } from '../tables/contact-tables.js';
import type { ChartContent, Filling, Values } from '../template/fill-template.js';
import { present } from './present.js';

/** What falls, what yields and what squeezes; no section without candidates. */
export function powerCutSection(context: ReportContext): Filling[] {
  if (context.candidates.length === 0) return [];
  const charts: Record<string, ChartContent | null> = {
    'push-force': pushChart(context),
    'crush-force': crushChart(context),
  };
  const values: Values = {
    finding: `${listed(context.focus.map((candidate) => `${candidate.label} ${fallWords(context, candidate)}`))}.`,
    power_cuts: { blocks: [powerCutsTable(context)] },
    contacts: { blocks: [contactTable(context)] },
    at_tip: context.assessment.study.feature.kind === 'hinge' ? context.phrases('at-tip') : '',
    has_push: charts['push-force'] !== null,
    has_crush: charts['crush-force'] !== null,
  };
  return [{ values, charts: present(charts) }];
}
