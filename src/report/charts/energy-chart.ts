import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { none, withReading } from '../words/figures.js';
import { chartContent, rowLabel, shortened } from './chart-content.js';

interface Part {
  consumer: string;
  energyJ: number;
}

/** As in the chart's template. */
const legendColumns = 3;

/** Loads shown by name; the rest are one part. */
const namedLoads = 2;

/** Energy per loop, split by consumer and by what the drives do; null when no candidate can play the loop. */
export function energyChart(context: ReportContext): ChartContent | null {
  const playing = shown(context);
  if (playing.length === 0) return null;
  const drawing = playing.flatMap((one) => parts(one).filter((part) => part.energyJ > 0));
  // All keep their colour; the legend names only those that take energy.
  const consumers = [...new Set(playing.flatMap((one) => parts(one).map((part) => part.consumer)))];
  const named = consumers.filter((name) => drawing.some((part) => part.consumer === name));
  const values = {
    rows: playing.flatMap((candidate) =>
      parts(candidate).map((part) => ({
        label: rowLabel(candidate),
        consumer: part.consumer,
        joules: part.energyJ,
        order: consumers.indexOf(part.consumer),
      })),
    ),
    sums: playing.map((candidate) => ({
      label: rowLabel(candidate),
      joules: energySum(candidate),
      note: `${withReading(energySum(candidate), 'joules')} in ${withReading(candidate.nominal.loopS, 'seconds')}`,
    })),
    consumers,
    shown: named,
    domain_end: Math.max(...playing.map(energySum)) * 1.22,
  };
  const legendRows = Math.ceil(named.length / legendColumns);
  const aspectRatio = 0.041 + 0.036 * legendRows + 0.027 * playing.length;
  return chartContent(context, {
    name: 'energy-per-loop',
    values,
    alternative: energyFinding(context),
    aspectRatio,
  });
}

/** States for each followed candidate what a loop takes and how much of it goes into holding. */
export function energyFinding(context: ReportContext): string {
  const each = context.focus
    .filter((candidate) => energySum(candidate) > 0)
    .map((candidate) =>
      context.phrases('energy-share', {
        candidate: candidate.label,
        sum: withReading(energySum(candidate), 'joules'),
        holding: withReading(
          (candidate.nominal.energy?.drivesHoldingJ ?? 0) / energySum(candidate),
          'percent',
        ),
        moving: withReading((candidate.nominal.energy?.drivesMovingJ ?? 0) / energySum(candidate), 'percent'),
      }),
    );
  return each.length === 0 ? none : each.join(' ');
}

/** The candidates that can play the loop: the first ones, and the one that exists. */
function shown(context: ReportContext): CandidateAssessment[] {
  const playing = context.candidates.filter((candidate) => energySum(candidate) > 0);
  return playing.filter((candidate, index) => index < mostRows - 1 || candidate === context.baseline);
}

/** More rows would push the other charts off the page. */
const mostRows = 6;

function parts({ nominal: { energy } }: CandidateAssessment): Part[] {
  if (energy === null) return [];
  const loads = [...energy.loads].sort((a, b) => b.energyJ - a.energyJ || a.id.localeCompare(b.id, 'en'));
  const rest = loads.slice(namedLoads);
  const restJ = rest.reduce((sum, load) => sum + load.energyJ, 0);
  return [
    { consumer: 'drives, holding', energyJ: energy.drivesHoldingJ },
    { consumer: 'drives, moving', energyJ: energy.drivesMovingJ },
    { consumer: 'drives, resting', energyJ: energy.drivesRestingJ },
    { consumer: 'drives, idle', energyJ: energy.drivesIdleJ },
    ...loads
      .slice(0, namedLoads)
      .map((load) => ({ consumer: shortened(load.label, 30), energyJ: load.energyJ })),
    ...(rest.length > 0 ? [{ consumer: 'other loads', energyJ: restJ }] : []),
  ].filter((part) => Number.isFinite(part.energyJ));
}

function energySum(candidate: CandidateAssessment): number {
  return parts(candidate).reduce((sum, part) => sum + part.energyJ, 0);
}
