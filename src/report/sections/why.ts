import { listed } from '../../assess/figures.js';
import { currentChart, currentFinding } from '../charts/current-chart.js';
import { effortChart, effortFinding } from '../charts/effort-chart.js';
import { energyChart, energyFinding } from '../charts/energy-chart.js';
import { holdCurrentChart, measuredHoldWords, positionHolders } from '../charts/hold-current-chart.js';
import { undrawnRuns, voltageChart, voltageFinding } from '../charts/voltage-chart.js';
import type { ReportContext } from '../context.js';
import type { ChartContent, Filling, Values } from '../template/fill-template.js';
import { counted } from '../words/figures.js';
import { unplayedWords } from '../words/unplayed.js';
import { present } from './present.js';

/** Page two: where the energy goes, how the pack falls, what drive and wires bear, how sure the hold current is. */
export function whySection(context: ReportContext): Filling[] {
  const charts: Record<string, ChartContent | null> = {
    'energy-per-loop': energyChart(context),
    'voltage-over-discharge': voltageChart(context),
    'effort-through-loop': effortChart(context),
    'current-through-loop': currentChart(context),
    'hold-current-figures': holdCurrentChart(context),
  };
  const idle = context.candidates.filter(({ nominal }) => nominal.runtimeS === null);
  const undrawn = undrawnRuns(context);
  const advice = context.assessment.protection.find((entry) => entry.candidate === context.focus[0]?.id);
  const values: Values = {
    followed: listed(context.focus.map((candidate) => candidate.label)),
    has_charts: Object.values(charts).some((chart) => chart !== null),
    has_energy: charts['energy-per-loop'] !== null,
    has_voltage: charts['voltage-over-discharge'] !== null,
    has_voltage_bands: (context.assessment.certainty?.runDownBands.length ?? 0) > 0,
    has_effort: charts['effort-through-loop'] !== null,
    has_current: charts['current-through-loop'] !== null,
    has_hold_current: charts['hold-current-figures'] !== null,
    energy_finding: energyFinding(context),
    voltage_finding: voltageFinding(context),
    undrawn_runs: undrawn.length === 0 ? '' : voltageFinding(context, undrawn),
    effort_finding: effortFinding(context),
    current_finding: currentFinding(context),
    holder_count: counted(positionHolders(context).length, 'drive'),
    hold_measured: measuredHoldWords(context),
    without_runtime: unplayedWords(context, idle),
    protection_advice: advice?.advice ?? '',
  };
  return [{ values, charts: present(charts) }];
}
