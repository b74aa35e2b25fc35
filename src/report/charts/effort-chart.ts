import type { CandidateAssessment } from '../../assess/assessment.js';
import type { Band } from '../../assess/certainty.js';
import { bandOf, type ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { banded, bandedWithUnit } from '../words/bands.js';
import { none, withReading } from '../words/figures.js';
import { chartContent, playsLoop, rankedLabel, shortened, thinned } from './chart-content.js';
import { cueBands } from './cue-bands.js';

const pointCount = 420;

/** A share beyond this would squash the curves: it cannot be given anyway. */
const mostShare = 1.3;

/** Effort needed as a share of what the drive can give at that speed, through one loop; null when nobody plays it to its end. */
export function effortChart(context: ReportContext): ChartContent | null {
  const playing = playingOf(context);
  if (playing.length === 0) return null;
  const rows = playing.flatMap(effortRows);
  const endS = Math.max(...playing.map((one) => one.series.loop.timesS.at(-1)!));
  const values = {
    rows,
    cues: cueBands(context, playing[0]!).filter((band) => band.end <= endS + 0.5),
    series: playing.map(seriesLabel),
    domain: [0, Math.max(130, ...rows.map((row) => row.percent + 5))],
    end: endS,
  };
  const alternative = effortFinding(context);
  return chartContent(context, { name: 'effort-through-loop', values, alternative, aspectRatio: 0.18 });
}

/** Largest share and torque margin of each followed candidate. */
export function effortFinding(context: ReportContext): string {
  const playing = playingOf(context);
  const each = context.focus.map((candidate) =>
    context.phrases(playing.includes(candidate) ? 'effort-share' : 'effort-share-unplayed', {
      candidate: candidate.label,
      most: withReading(Math.max(0, ...sharesOf(candidate)), 'percent'),
      shaken: bandedWithUnit(
        shareBand(bandOf(candidate, 'torqueMarginRatio')),
        inverse(candidate.nominal.torqueMarginRatio),
        'percent',
      ),
      margin: banded(bandOf(candidate, 'torqueMarginRatio'), candidate.nominal.torqueMarginRatio, 'ratio'),
    }),
  );
  return playing.length === 0 ? none : each.join(' ');
}

const inverse = (marginRatio: number | null): number | null => marginRatio && 1 / marginRatio;

/** The share of its strength that a drive needs, from the torque margin: the largest of one is the least of the other. */
const shareBand = (margin: Band | null): Band | null =>
  margin && { ...margin, p10: 1 / margin.p90, median: 1 / margin.median, p90: 1 / margin.p10 };

function playingOf(context: ReportContext): CandidateAssessment[] {
  return context.focus.filter(playsLoop);
}

/** A feature that pushes the drive needs no effort of it. */
function sharesOf({ series: { loop } }: CandidateAssessment): number[] {
  return loop.driveEfforts.map((effort, index) => {
    const available = loop.availableEfforts[index]!;
    if (!(effort > 0)) return 0;
    return available > 0 ? Math.min(mostShare, effort / available) : mostShare;
  });
}

function effortRows(candidate: CandidateAssessment) {
  return thinned(candidate.series.loop.timesS, sharesOf(candidate), pointCount).map((point) => ({
    series: seriesLabel(candidate),
    seconds: point.time,
    percent: point.value * 100,
  }));
}

function seriesLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 40);
}
