import type { CandidateAssessment } from '../../assess/assessment.js';
import { type ReportContext, roleOf } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { duration, listed, withReading } from '../words/figures.js';
import { brokenLabel, chartContent, rankedLabel } from './chart-content.js';

/** Runtime on one pack per candidate, against the time that would be enough. */
export function runtimeChart(context: ReportContext): ChartContent {
  const targetS = context.assessment.study.targetRuntimeS;
  const longestS = Math.max(targetS ?? 0, ...context.candidates.map((one) => one.nominal.runtimeS ?? 0), 60);
  const domainEnd = (longestS / 60) * 1.34;
  const rows = context.candidates.map((candidate) => runtimeRow(context, candidate));
  const values = {
    rows,
    // White paper under notes that the target line would run through.
    masks: rows
      .filter((row) => crosses(row, targetS, domainEnd))
      .map((row) => ({ ...row, end: noteEnd(row, domainEnd) })),
    target:
      targetS === null
        ? []
        : [{ minutes: targetS / 60, label: `enough: ${withReading(targetS, 'minutes')}` }],
    domain_end: domainEnd,
  };
  const alternative = runtimeFinding(context, targetS);
  const aspectRatio = 0.085 + rowHeight(context.candidates.length) * context.candidates.length;
  return chartContent(context, { name: 'runtime-against-target', values, alternative, aspectRatio });
}

function runtimeRow(context: ReportContext, candidate: CandidateAssessment) {
  const { runtimeS } = candidate.nominal;
  const failed = candidate.limits.filter((limit) => limit.passes === false).length;
  const fails = failed === 0 ? '' : ' ✗ fails';
  return {
    label: brokenLabel(rankedLabel(candidate), 32),
    minutes: runtimeS === null ? 0 : runtimeS / 60,
    role: roleOf(context, candidate),
    passes: failed === 0,
    note: runtimeS === null ? 'no runtime' : `${withReading(runtimeS, 'minutes')}${fails}`,
  };
}

function runtimeFinding(context: ReportContext, targetS: number | null): string {
  const { phrases } = context;
  const running = context.candidates.filter((candidate) => candidate.nominal.runtimeS !== null);
  if (running.length === 0) return phrases('runtime-finding-none');
  const each = listed(running.map((one) => `${one.label} ${duration(one.nominal.runtimeS)}`));
  if (targetS === null) return phrases('runtime-finding', { each });
  const enough = running.filter((one) => one.nominal.runtimeS! >= targetS).length;
  const counts = { enough: String(enough), all: String(context.candidates.length) };
  return phrases('runtime-finding-target', { each, target: duration(targetS), ...counts });
}

function noteEnd(row: { minutes: number; note: string }, domainEnd: number): number {
  return row.minutes + (row.note.length + 1.5) * signWidth * domainEnd;
}

function crosses(row: { minutes: number; note: string }, targetS: number | null, domainEnd: number): boolean {
  return targetS !== null && row.minutes < targetS / 60 && noteEnd(row, domainEnd) > targetS / 60;
}

/** Width of a letter as a share of the chart's width, about. */
const signWidth = 0.021;

/** Height of a row as a share of the page's width: roomier when there are few. */
function rowHeight(count: number): number {
  return Math.min(0.048, Math.max(0.034, 0.3 / count));
}
