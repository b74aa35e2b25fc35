import type { CandidateAssessment, ProtectionOutcome } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { current, none } from '../words/figures.js';
import { chartContent, playsLoop, rankedLabel, shortened, thinned } from './chart-content.js';
import { cueBands } from './cue-bands.js';

const pointCount = 420;

/** A limit up to this multiple of the highest current is drawn; one beyond would squash the curves. */
const shownLimitRatio = 2.2;

/** Height of a name as a share of the chart's height, about. */
const nameHeight = 0.14;

/** Pack current through one loop against what pack, fuse, wire and protection allow; null when nobody plays. */
export function currentChart(context: ReportContext): ChartContent | null {
  const playing = context.focus.filter(playsLoop);
  if (playing.length === 0) return null;
  const peakA = Math.max(0.1, ...playing.flatMap((one) => one.series.loop.packCurrentsA));
  const limits = currentLimits(context);
  const near = limits.filter((limit) => limit.amperes <= peakA * shownLimitRatio);
  const topA = Math.max(peakA, ...near.map((limit) => limit.amperes)) * 1.28;
  const endS = Math.max(...playing.map((one) => one.series.loop.timesS.at(-1)!));
  const values = {
    rows: playing.flatMap((candidate) => currentRows(candidate)),
    cues: cueBands(context, playing[0]!).filter((band) => band.end <= endS + 0.5),
    limits: near.map((limit, index) => ({
      ...limit,
      label: `${limit.label} ${current(limit.amperes)}`,
      // Two names above lines that lie close together would cover each other.
      below: (near[index + 1]?.amperes ?? Number.POSITIVE_INFINITY) - limit.amperes < topA * nameHeight,
    })),
    series: playing.map(seriesLabel),
    domain: [0, topA],
    end: endS,
  };
  const alternative = currentFinding(context);
  return chartContent(context, { name: 'current-through-loop', values, alternative, aspectRatio: 0.2 });
}

/** Peak of each followed candidate against the limits, those beyond the chart included. */
export function currentFinding(context: ReportContext): string {
  const playing = context.focus.filter(playsLoop);
  if (playing.length === 0) return none;
  const peaks = playing.map((candidate) =>
    context.phrases('current-peak', {
      candidate: candidate.label,
      peak: current(candidate.nominal.peakPackCurrentA),
      mean: current(candidate.nominal.meanPackCurrentA),
    }),
  );
  const limits = currentLimits(context).map(({ label, amperes }) => {
    const [name, kind] = label.split(', ');
    return [name, current(amperes), kind].filter(Boolean).join(' ');
  });
  const allowed =
    limits.length === 0
      ? context.phrases('current-no-limits')
      : context.phrases('current-limits', { limits: listed(limits) });
  return `${peaks.join(' ')} ${allowed}`;
}

function currentLimits(context: ReportContext): { label: string; amperes: number }[] {
  const known = context.assessment.protection.find((entry) => entry.candidate === context.focus[0]?.id);
  if (!known) return [];
  const named: [string, keyof ProtectionOutcome][] = [
    ['fuse, continuous', 'fuseContinuousA'],
    ['wire, continuous', 'wireContinuousA'],
    ['protection trip', 'protectionTripA'],
    ['pack, continuous', 'packContinuousA'],
  ];
  return named
    .flatMap(([label, key]) => {
      const amperes = known[key];
      return typeof amperes === 'number' ? [{ label, amperes }] : [];
    })
    .sort((a, b) => a.amperes - b.amperes);
}

function currentRows(candidate: CandidateAssessment) {
  const { timesS, packCurrentsA } = candidate.series.loop;
  return thinned(timesS, packCurrentsA, pointCount).map((point) => ({
    series: seriesLabel(candidate),
    seconds: point.time,
    amperes: point.value,
  }));
}

function seriesLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 40);
}
