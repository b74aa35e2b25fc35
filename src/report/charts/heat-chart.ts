import type { CandidateAssessment } from '../../assess/assessment.js';
import { longContactK } from '../../assess/thresholds.js';
import type { HeatSeries } from '../../simulate/outcome.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { withReading } from '../words/figures.js';
import { heatReadings } from '../words/survivable.js';
import { chartContent, rankedLabel, shortened, thinned } from './chart-content.js';
import { spreadApart } from './spread-apart.js';

const pointCount = 160;

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
  wholeOf: (candidate: CandidateAssessment) => HeatSeries,
): ChartContent | null {
  const seriesOf = (candidate: CandidateAssessment) => lived(context, candidate, wholeOf(candidate));
  const shown = context.focus.filter((candidate) => seriesOf(candidate).timesS.length > 1);
  if (shown.length === 0) return null;
  const rows = shown.flatMap((candidate) => [
    ...heatRows(context, candidate, seriesOf(candidate), 'winding'),
    ...heatRows(context, candidate, seriesOf(candidate), 'case'),
  ]);
  const degrees = rows.map((row) => row.temperature);
  const [least, most] = [Math.min(...degrees), Math.max(...degrees)];
  const limits = heatLimits(context, shown).filter(
    ({ temperature }) => temperature <= most + difference(context, shownAboveK),
  );
  const top = Math.max(most, ...limits.map(({ temperature }) => temperature));
  const span = Math.max(top - least, difference(context, 10));
  const endMinutes = Math.max(...rows.map((row) => row.minutes));
  const values = {
    rows,
    ends: endNotes([...lineEnds(context, shown, seriesOf), ...limits], endMinutes, span),
    limits: limits.map((limit) => ({ ...limit, start: 0, end: endMinutes })),
    series: shown.map(seriesLabel),
    domain: [least - span * 0.1, top + span * 0.08],
    end: endMinutes * 1.42,
    temperature_unit: context.units.temperature.unit,
  };
  const alternative = heatFinding(context, wholeOf);
  return chartContent(context, { name: 'heat-over-time', values, alternative, aspectRatio: 0.4 });
}

function heatRows(
  { units: { temperature } }: ReportContext,
  candidate: CandidateAssessment,
  heat: HeatSeries,
  part: Part,
) {
  const temperaturesK = part === 'winding' ? heat.windingTemperaturesK : heat.caseTemperaturesK;
  return thinned(heat.timesS, temperaturesK, pointCount).map(({ time, value }) => ({
    series: seriesLabel(candidate),
    part,
    line: `${candidate.id} ${part}`,
    minutes: time / 60,
    temperature: temperature.valueOf(value),
  }));
}

/** A difference of temperatures in the unit of the chart. */
function difference({ units: { temperature } }: ReportContext, differenceK: number): number {
  return temperature.valueOf(differenceK) - temperature.valueOf(0);
}

/** Limits of the windings, and what a body bears for hours where the feature is worn. */
function heatLimits(context: ReportContext, shown: CandidateAssessment[]) {
  const { study } = context.assessment;
  const { temperature } = context.units;
  const windings = new Set(
    shown.flatMap(({ id }) => study.candidates.find((one) => one.id === id)?.sheet.windingLimitK ?? []),
  );
  const lines = [...windings].map((limitK) => ({
    temperature: temperature.valueOf(limitK),
    note: context.phrases('heat-limit', { limit: withReading(limitK, temperature) }),
    colour: limitColour,
  }));
  const touch = {
    temperature: temperature.valueOf(longContactK),
    note: context.phrases('heat-touch', { limit: withReading(longContactK, temperature) }),
    colour: limitColour,
  };
  return study.carrier.worn ? [...lines, touch] : lines;
}

/** Where the lines end, with what they are. */
function lineEnds(
  context: ReportContext,
  shown: CandidateAssessment[],
  seriesOf: (candidate: CandidateAssessment) => HeatSeries,
) {
  return shown.flatMap((candidate, index) => {
    const { temperature } = context.units;
    const { windingTemperaturesK, caseTemperaturesK } = seriesOf(candidate);
    const end = (part: Part, temperatureK: number) => ({
      colour: lineColours[index]!,
      temperature: temperature.valueOf(temperatureK),
      note: `${candidate.rank} ${part} ${withReading(temperatureK, temperature)}`,
    });
    const [windingK, caseK] = [windingTemperaturesK.at(-1)!, caseTemperaturesK.at(-1)!];
    const note = context.phrases('heat-burns-out', { rank: String(candidate.rank) });
    return burnsOut(context, candidate, seriesOf(candidate))
      ? [{ ...end('winding', windingK), note }]
      : [end('winding', windingK), end('case', caseK)];
  });
}

/** What stands at the right of lines and limits, moved apart where they are close together. */
function endNotes(
  ends: { colour: string; temperature: number; note: string }[],
  minutes: number,
  span: number,
) {
  const places = spreadApart(
    ends.map(({ temperature }) => temperature),
    span * 0.075,
  );
  return ends.map((end, index) => ({ ...end, minutes, note_temperature: places[index]! }));
}

/** Whether a run of temperatures ends with the winding past its limit. */
const burnsOut = (context: ReportContext, candidate: CandidateAssessment, heat: HeatSeries): boolean =>
  (heat.windingTemperaturesK.at(-1) ?? 0) > heatReadings(context, candidate).windingEndK;

/** The temperatures up to the moment in which the winding passes its limit: there is no drive afterwards. */
function lived(context: ReportContext, candidate: CandidateAssessment, heat: HeatSeries): HeatSeries {
  const { windingEndK } = heatReadings(context, candidate);
  const last = heat.windingTemperaturesK.findIndex((temperatureK) => temperatureK > windingEndK);
  const end = last < 0 ? heat.timesS.length : last + 1;
  return {
    timesS: heat.timesS.slice(0, end),
    windingTemperaturesK: heat.windingTemperaturesK.slice(0, end),
    caseTemperaturesK: heat.caseTemperaturesK.slice(0, end),
  };
}

/** Where each line ends. */
function heatFinding(
  context: ReportContext,
  wholeOf: (candidate: CandidateAssessment) => HeatSeries,
): string {
  return context.focus
    .filter((candidate) => wholeOf(candidate).timesS.length > 1)
    .map((candidate) => {
      const heat = lived(context, candidate, wholeOf(candidate));
      const { timesS, windingTemperaturesK, caseTemperaturesK } = heat;
      const phrase = burnsOut(context, candidate, heat) ? 'heat-finding-past' : 'heat-finding';
      return context.phrases(phrase, {
        candidate: candidate.label,
        time: withReading(timesS.at(-1)!, 'minutes'),
        winding: withReading(windingTemperaturesK.at(-1)!, context.units.temperature),
        case: withReading(caseTemperaturesK.at(-1)!, context.units.temperature),
      });
    })
    .join(' ');
}

function seriesLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 40);
}
