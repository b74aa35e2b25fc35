import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { duration, fixed, joined, none, withReading } from '../words/figures.js';
import { endReasonWords } from '../words/outcome-words.js';
import { chartContent, rankedLabel, shortened, thinned } from './chart-content.js';

/** Points per line; enough for a smooth curve on paper. */
const pointCount = 160;

/** Pack voltage over the discharge with warning and cut-off; null when nobody followed has a run. */
export function voltageChart(context: ReportContext): ChartContent | null {
  const running = context.focus.filter((candidate) => candidate.series.runDown.timesS.length > 1);
  if (running.length === 0) return null;
  const { pack } = context.assessment.study;
  const cutOffV = pack.cutOffVoltageV * pack.seriesCount;
  const warningV = pack.warningVoltageV * pack.seriesCount;
  const lowest = Math.min(cutOffV, ...running.flatMap((one) => one.series.runDown.lowestVoltagesV));
  const highest = Math.max(warningV, ...running.flatMap((one) => one.series.runDown.lowestVoltagesV));
  const span = Math.max(highest - lowest, 0.1);
  const values = {
    rows: running.flatMap((candidate) =>
      thinned(candidate.series.runDown.timesS, candidate.series.runDown.lowestVoltagesV, pointCount).map(
        (point) => ({ series: seriesLabel(candidate), minutes: point.time / 60, volts: point.value }),
      ),
    ),
    ends: runEnds(running, lowest, span),
    levels: [
      { volts: warningV, label: `warning ${fixed(warningV, 1)}${joined}V` },
      { volts: cutOffV, label: `cut-off ${fixed(cutOffV, 1)}${joined}V` },
    ],
    series: running.map(seriesLabel),
    domain: [lowest - span * 0.34, highest + span * 0.05],
  };
  const alternative = voltageFinding(context);
  return chartContent(context, { name: 'voltage-over-discharge', values, alternative, aspectRatio: 0.335 });
}

/** What ends the run of each followed candidate, and when. */
export function voltageFinding(context: ReportContext): string {
  const { phrases } = context;
  const each = context.focus.map(({ label, nominal }) =>
    nominal.runtimeS === null || nominal.endReason === null
      ? phrases('voltage-no-run', { candidate: label })
      : phrases('voltage-end', {
          candidate: label,
          runtime: duration(nominal.runtimeS),
          reason: endReasonWords[nominal.endReason],
          warning:
            nominal.warningS === null
              ? phrases('voltage-no-warning')
              : phrases('voltage-warning', { after: duration(nominal.warningS) }),
        }),
  );
  return each.length === 0 ? none : each.join(' ');
}

/** Where each line ends: the text below all lines, on the side that has room, close ones on rows of their own. */
function runEnds(running: CandidateAssessment[], lowest: number, span: number) {
  const longest = Math.max(...running.map((one) => one.series.runDown.timesS.at(-1)!));
  return running.map((candidate, index) => {
    const { timesS, lowestVoltagesV } = candidate.series.runDown;
    const endS = timesS.at(-1)!;
    const reason = candidate.nominal.endReason === null ? '' : endReasonWords[candidate.nominal.endReason];
    const others = running.slice(0, index).map((one) => one.series.runDown.timesS.at(-1)!);
    const isClose = others.some((other) => Math.abs(other - endS) < longest * 0.95);
    return {
      series: seriesLabel(candidate),
      minutes: endS / 60,
      volts: lowestVoltagesV.at(-1)!,
      note: `${withReading(endS, 'minutes')}: ${reason}`,
      side: endS > longest * 0.55 ? 'right' : 'left',
      note_volts: lowest - span * (isClose ? 0.26 : 0.12),
      bottom: lowest - span * 0.34,
      shape: index === 0 ? 'circle' : 'square',
    };
  });
}

function seriesLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 60);
}
