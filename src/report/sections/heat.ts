import { heatHeldChart, heatInShowChart } from '../charts/heat-chart.js';
import type { ReportContext } from '../context.js';
import { heatTable } from '../tables/heat-table.js';
import type { ChartContent, Filling, Values } from '../template/fill-template.js';
import { withReading } from '../words/figures.js';
import { unknownHeatWords } from '../words/unplayed.js';
import { present } from './present.js';

/** How warm the drives get; no section when no candidate's heat is known. */
export function heatSection(context: ReportContext): Filling[] {
  const known = context.candidates.filter(({ nominal }) => nominal.windingTemperatureK !== null);
  if (known.length === 0) return [];
  const charts: Record<string, ChartContent | null> = {
    'heat-in-show': heatInShowChart(context),
    'heat-held': heatHeldChart(context),
  };
  const values: Values = {
    air: withReading(context.assessment.study.air.temperatureK, context.units.temperature),
    has_show: charts['heat-in-show'] !== null,
    has_held: charts['heat-held'] !== null,
    heat: { blocks: [heatTable(context)] },
    without_heat: unknownHeatWords(context),
  };
  return [{ values, charts: present(charts) }];
}
