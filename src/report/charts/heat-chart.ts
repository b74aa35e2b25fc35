import type { CandidateAssessment } from '../../assess/assessment.js';
import type { HeatSeries } from '../../simulate/outcome.js';
import type { ReportContext } from '../context.js';
import { longContactK } from '../tables/thresholds.js';
import type { ChartContent } from '../template/fill-template.js';
import { withReading } from '../words/figures.js';
import { chartContent, rankedLabel, shortened, thinned } from './chart-content.js';
import { spreadApart } from './spread-apart.js';

const pointCount = 160;
const iceK = 273.15;

/** A limit further above everything that is drawn would squash the curves. */
const shownAboveK = 45;

/** Colours of the notes at the ends of lines, as the lines have them in the chart's template. */
const lineColours = ['#0b5d6b', '#c2761b'];
const limitColour = '#17252f';

type Part = 'winding' | 'case';

/** Winding and case of the followed candidates in the looped show, from cold; null when nobody's heat is known. */
export function heatInShowChart(context: ReportContext): ChartContent | null {
  return heatChart(context, ({ series }) => series.heatInShow);
}

/** The same if the first hold never ended. */
export function heatHeldChart(context: ReportContext): ChartContent | null {
  return heatChart(context, ({ series }) => series.heatHolding);
}

function heatChart(
  context: ReportContext,
  seriesOf: (candidate: CandidateAssessment) => HeatSeries,
): ChartContent | null {
  const shown = context.focus.filter((candidate) => seriesOf(candidate).timesS.length > 1);
  if (shown.length === 0) return null;
  const rows = shown.flatMap((candidate) => [
    ...heatRows(candidate, seriesOf(candidate), 'winding'),
    ...heatRows(candidate, seriesOf(candidate), 'case'),
  ]);
  const degrees = rows.map((row) => row.celsius);
  const [least, most] = [Math.min(...degrees), Math.max(...degrees)];
  const limits = heatLimits(context, shown).filter(({ celsius }) => celsius <= most + shownAboveK);
  const top = Math.max(most, ...limits.map(({ celsius }) => celsius));
  const span = Math.max(top - least, 10);
  const endMinutes = Math.max(...rows.map((row) => row.minutes));
  const values = {
    rows,
    ends: endNotes([...lineEnds(shown, seriesOf), ...limits], endMinutes, span),
    limits: limits.map((limit) => ({ ...limit, start: 0, end: endMinutes })),
    series: shown.map(seriesLabel),
    domain: [least - span * 0.1, top + span * 0.08],
    end: endMinutes * 1.42,
  };
  const alternative = heatFinding(context, seriesOf);
  return chartContent(context, { name: 'heat-over-time', values, alternative, aspectRatio: 0.4 });
}

function heatRows(candidate: CandidateAssessment, heat: HeatSeries, part: Part) {
  const temperaturesK = part === 'winding' ? heat.windingTemperaturesK : heat.caseTemperaturesK;
  return thinned(heat.timesS, temperaturesK, pointCount).map(({ time, value }) => ({
    series: seriesLabel(candidate),
    part,
    line: `${candidate.id} ${part}`,
    minutes: time / 60,
    celsius: value - iceK,
  }));
}

/** Limits of the windings, and what a body bears for hours where the feature is worn. */
function heatLimits(context: ReportContext, shown: CandidateAssessment[]) {
  const { study } = context.assessment;
  const windings = new Set(
    shown.flatMap(({ id }) => study.candidates.find((one) => one.id === id)?.sheet.windingLimitK ?? []),
  );
  const lines = [...windings].map((limitK) => ({
    celsius: limitK - iceK,
    note: context.phrases('heat-limit', { limit: withReading(limitK, 'celsius') }),
    colour: limitColour,
  }));
  const touch = {
    celsius: longContactK - iceK,
    note: context.phrases('heat-touch', { limit: withReading(longContactK, 'celsius') }),
    colour: limitColour,
  };
  return study.carrier.worn ? [...lines, touch] : lines;
}

/** Where the lines end, with what they are. */
function lineEnds(shown: CandidateAssessment[], seriesOf: (candidate: CandidateAssessment) => HeatSeries) {
  return shown.flatMap((candidate, index) => {
    const { windingTemperaturesK, caseTemperaturesK } = seriesOf(candidate);
    const end = (part: Part, temperatureK: number) => ({
      colour: lineColours[index]!,
      celsius: temperatureK - iceK,
      note: `${candidate.rank} ${part} ${withReading(temperatureK, 'celsius')}`,
    });
    return [end('winding', windingTemperaturesK.at(-1)!), end('case', caseTemperaturesK.at(-1)!)];
  });
}

/** What stands at the right of lines and limits, moved apart where they are close together. */
function endNotes(ends: { colour: string; celsius: number; note: string }[], minutes: number, span: number) {
  const places = spreadApart(
    ends.map(({ celsius }) => celsius),
    span * 0.075,
  );
  return ends.map((end, index) => ({ ...end, minutes, note_celsius: places[index]! }));
}

/** Where each line ends. */
function heatFinding(
  context: ReportContext,
  seriesOf: (candidate: CandidateAssessment) => HeatSeries,
): string {
  return context.focus
    .filter((candidate) => seriesOf(candidate).timesS.length > 1)
    .map((candidate) => {
      const { timesS, windingTemperaturesK, caseTemperaturesK } = seriesOf(candidate);
      return context.phrases('heat-finding', {
        candidate: candidate.label,
        time: withReading(timesS.at(-1)!, 'minutes'),
        winding: withReading(windingTemperaturesK.at(-1)!, 'celsius'),
        case: withReading(caseTemperaturesK.at(-1)!, 'celsius'),
      });
    })
    .join(' ');
}

function seriesLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 40);
}
