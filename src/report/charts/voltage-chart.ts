import type { CandidateAssessment } from '../../assess/assessment.js';
import type { RunDownBand } from '../../assess/certainty.js';
import { bandOf, type ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { bandedWithUnit } from '../words/bands.js';
import { duration, fixed, joined, none } from '../words/figures.js';
import { endReasonWords } from '../words/outcome-words.js';
import { chartContent, rankedLabel, shortened, thinned } from './chart-content.js';

/** Points per line; enough for a smooth curve on paper. */
const pointCount = 160;

/** The run that a candidate's line follows, and the two that bound it where there are draws. */
interface Run {
  candidate: CandidateAssessment;
  band: RunDownBand | null;
  timesS: number[];
  voltagesV: number[];
  endS: number;
}

/** Pack voltage over the discharge with warning and cut-off; null when nobody followed has a run. */
export function voltageChart(context: ReportContext): ChartContent | null {
  const runs = runsOf(context);
  if (runs.length === 0) return null;
  const { pack } = context.assessment.study;
  const cutOffV = pack.cutOffVoltageV * pack.seriesCount;
  const warningV = pack.warningVoltageV * pack.seriesCount;
  const drawn = runs.flatMap(({ voltagesV, band }) => [
    ...voltagesV,
    ...(band?.lowVoltagesV ?? []),
    ...(band?.highVoltagesV ?? []),
  ]);
  const lowest = Math.min(cutOffV, ...drawn);
  const highest = Math.max(warningV, ...drawn);
  const span = Math.max(highest - lowest, 0.1);
  const values = {
    rows: runs.flatMap((run) => lineRows(run)),
    bands: runs.flatMap((run) => bandRows(run)),
    edges: runs.flatMap((run) => edgeRows(run)),
    ends: runEnds(runs, lowest, span),
    levels: [
      { volts: warningV, label: `warning ${fixed(warningV, 1)}${joined}V` },
      { volts: cutOffV, label: `cut-off ${fixed(cutOffV, 1)}${joined}V` },
    ],
    series: runs.map(({ candidate }) => seriesLabel(candidate)),
    domain: [lowest - span * 0.34, highest + span * 0.05],
  };
  const alternative = voltageFinding(context);
  return chartContent(context, { name: 'voltage-over-discharge', values, alternative, aspectRatio: 0.285 });
}

/** Of each followed candidate its nominal run, or with draws the one in the middle of them. */
function runsOf(context: ReportContext): Run[] {
  const bands = context.assessment.certainty?.runDownBands ?? [];
  return context.focus.flatMap((candidate): Run[] => {
    const band = bands.find((one) => one.candidate === candidate.id) ?? null;
    const { timesS, lowestVoltagesV } = candidate.series.runDown;
    if (band === null) {
      if (timesS.length < 2) return [];
      return [{ candidate, band, timesS, voltagesV: lowestVoltagesV, endS: timesS.at(-1)! }];
    }
    const [, endS] = band.endTimesS;
    return [{ candidate, band, timesS: band.timesS, voltagesV: band.middleVoltagesV, endS }];
  });
}

function lineRows({ candidate, timesS, voltagesV, endS }: Run) {
  return thinned(timesS, voltagesV, pointCount)
    .filter(({ time }) => time <= endS)
    .map(({ time, value }) => ({ series: seriesLabel(candidate), minutes: time / 60, volts: value }));
}

/** Between the run that ends first and the one that ends last, as long as both go on. */
function bandRows({ candidate, band }: Run) {
  if (band === null) return [];
  return band.timesS.flatMap((timeS, index) => {
    if (timeS > band.endTimesS[0]) return [];
    const [low, high] = [band.lowVoltagesV[index]!, band.highVoltagesV[index]!];
    return [{ series: seriesLabel(candidate), minutes: timeS / 60, low, high }];
  });
}

function edgeRows({ candidate, band }: Run) {
  if (band === null) return [];
  const edges = [
    { edge: 'low', voltagesV: band.lowVoltagesV, endS: band.endTimesS[0] },
    { edge: 'high', voltagesV: band.highVoltagesV, endS: band.endTimesS[2] },
  ];
  return edges.flatMap(({ edge, voltagesV, endS }) =>
    band.timesS.flatMap((timeS, index) =>
      timeS > endS
        ? []
        : [
            {
              series: seriesLabel(candidate),
              line: `${candidate.id} ${edge}`,
              minutes: timeS / 60,
              volts: voltagesV[index]!,
            },
          ],
    ),
  );
}

/** Followed candidates that run, but too long for the simulation to keep a curve of it. */
export function undrawnRuns(context: ReportContext): CandidateAssessment[] {
  const drawn = runsOf(context).map(({ candidate }) => candidate);
  return context.focus.filter((one) => one.nominal.runtimeS !== null && !drawn.includes(one));
}

/** What ends the run of each followed candidate, and when. */
export function voltageFinding(context: ReportContext, followed = context.focus): string {
  const { phrases } = context;
  const each = followed.map(({ label, nominal }) =>
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
function runEnds(runs: Run[], lowest: number, span: number) {
  const longest = Math.max(...runs.map(({ endS, band }) => band?.endTimesS[2] ?? endS));
  return runs.map(({ candidate, endS, voltagesV, timesS, band }, index) => {
    const reason = candidate.nominal.endReason === null ? '' : endReasonWords[candidate.nominal.endReason];
    const others = runs.slice(0, index).map((one) => one.endS);
    const isClose = others.some((other) => Math.abs(other - endS) < longest * 0.95);
    const last = timesS.findLastIndex((timeS) => timeS <= endS);
    return {
      series: seriesLabel(candidate),
      minutes: endS / 60,
      volts: voltagesV[last]!,
      // The figures of page one: the run that is drawn is the draw nearest to them.
      note: `${bandedWithUnit(band && bandOf(candidate, 'runtimeS'), endS, 'minutes')}: ${reason}`,
      side: endS > longest * 0.55 ? 'right' : 'left',
      note_volts: lowest - span * (isClose ? 0.26 : 0.12),
      bottom: lowest - span * 0.04,
      shape: index === 0 ? 'circle' : 'square',
    };
  });
}

function seriesLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 40);
}
