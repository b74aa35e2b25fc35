import { listed } from '../../assess/figures.js';
import { massChart } from '../charts/mass-chart.js';
import { tradeChart, tradeFinding } from '../charts/trade-chart.js';
import type { ReportContext } from '../context.js';
import { fitTable } from '../tables/fit-table.js';
import type { ChartContent, Filling, Values } from '../template/fill-template.js';
import { counted } from '../words/figures.js';
import { present } from './present.js';

/** What the candidates weigh, whether they fit, what they cost; no section without candidates. */
export function massFitMoneySection(context: ReportContext): Filling[] {
  if (context.candidates.length === 0) return [];
  const charts: Record<string, ChartContent | null> = {
    'mass-by-part': massChart(context),
    'runtime-against-mass': tradeChart(context),
  };
  const { study } = context.assessment;
  const unknown = context.candidates.filter(({ nominal }) => nominal.bodyMassKg === null);
  const values: Values = {
    where: study.carrier.worn ? 'on the body' : 'carried',
    packs: counted(study.packsCarriedCount, 'pack'),
    has_mass: charts['mass-by-part'] !== null,
    has_trade: charts['runtime-against-mass'] !== null,
    trade_finding: tradeFinding(context),
    fit: { blocks: [fitTable(context)] },
    without_mass: listed(unknown.map(({ label }) => label)),
  };
  return [{ values, charts: present(charts) }];
}
