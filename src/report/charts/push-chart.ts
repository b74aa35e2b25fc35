import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { withReading } from '../words/figures.js';
import { brokenLabel, chartContent, rankedLabel } from './chart-content.js';
import { halfPageHeight } from './crush-chart.js';

const labelWidth = 22;

/** The four pushes of a candidate, as the symbols that stand for them. */
const pushes = [
  { key: 'pushDownN', way: 'down', powered: true, shape: 'triangle-down' },
  { key: 'pushUpN', way: 'up', powered: true, shape: 'triangle-up' },
  { key: 'unpoweredPushDownN', way: 'down', powered: false, shape: 'triangle-down' },
  { key: 'unpoweredPushUpN', way: 'up', powered: false, shape: 'triangle-up' },
] as const;

/** Push that moves the feature off its pose, both ways, powered and not; null when no drive yields. */
export function pushChart(context: ReportContext): ChartContent | null {
  const { candidates } = context;
  const points = candidates.flatMap((candidate) => pushPoints(context, candidate));
  if (points.length === 0) return null;
  const longest = Math.max(context.units.force.valueOf(1), ...points.map(({ force }) => force));
  const labels = candidates.map(label);
  const locked = candidates
    .filter((candidate) => pushPoints(context, candidate).length === 0)
    .map((candidate) => ({ label: label(candidate), note: context.phrases('push-locked') }));
  const values = {
    labels,
    points,
    spans: candidates.flatMap((candidate) => pushSpan(context, candidate)),
    locked,
    domain_end: longest * 1.12,
    force_unit: context.units.force.unit,
  };
  const aspectRatio = halfPageHeight(candidates.length);
  return chartContent(context, {
    name: 'push-force',
    values,
    alternative: pushFinding(context),
    aspectRatio,
  });
}

/** How hard somebody has to push each feature down before it yields. */
function pushFinding(context: ReportContext): string {
  return context.candidates
    .map(({ label: name, nominal }) =>
      nominal.pushDownN === null
        ? context.phrases('push-finding-locked', { candidate: name })
        : context.phrases('push-finding', {
            candidate: name,
            powered: withReading(nominal.pushDownN, context.units.force),
            unpowered: withReading(nominal.unpoweredPushDownN, context.units.force),
          }),
    )
    .join(' ');
}

function label(candidate: CandidateAssessment): string {
  return brokenLabel(rankedLabel(candidate), labelWidth);
}

function pushPoints({ units: { force } }: ReportContext, candidate: CandidateAssessment) {
  return pushes.flatMap(({ key, powered, shape }) => {
    const forceN = candidate.nominal[key];
    if (forceN === null) return [];
    return [{ label: label(candidate), force: force.valueOf(forceN), powered, shape }];
  });
}

function pushSpan(context: ReportContext, candidate: CandidateAssessment) {
  const forces = pushPoints(context, candidate).map(({ force }) => force);
  if (forces.length < 2) return [];
  return [{ label: label(candidate), low: Math.min(...forces), high: Math.max(...forces) }];
}
