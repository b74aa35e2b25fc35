import type { CandidateAssessment } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import { type ReportContext, roleOf, runtimeBandOf } from '../context.js';
import type { ChartPlace } from '../template/chart-place.js';
import type { ChartContent } from '../template/fill-template.js';
import { fixed, withReading } from '../words/figures.js';
import { chartContent, rankedLabel, shortened } from './chart-content.js';
import { placeLabels } from './place-labels.js';

/** The figure's width over its height, about; labels are placed by it. */
const proportion = { wide: 2.2, narrow: 1.3 };

/** Half the width of a line as a share of the figure's height. */
const hair = 0.004;

/** Room that the name of the target takes at the left end of its line, same scale. */
const targetNote = 0.45;

/** Letters of a label; the rank tells the rest. */
const mostLetters = 26;

/** Letters of a name in the key below a narrow chart. */
const mostKeyLetters = 48;

/** Runtime against mass, with the candidates that no other beats in everything; null without both figures. */
export function tradeChart(context: ReportContext): ChartContent | null {
  const points = context.candidates.flatMap((candidate) => tradePoint(context, candidate));
  if (points.length < 2) return null;
  const targetS = context.assessment.study.targetRuntimeS;
  const masses = points.map((point) => point.mass);
  const minutes = [
    ...points.flatMap(({ low, high }) => [low, high]),
    ...(targetS === null ? [] : [targetS / 60]),
  ];
  const width = frame(masses, 0.08, 0.22);
  const height = frame(minutes, 0.1, 0.12);
  const across = (mass: number) => (mass - width[0]) / (width[1] - width[0]);
  const up = (time: number) => (time - height[0]) / (height[1] - height[0]);
  const placed = (place: ChartPlace, notesOf: (point: TradePoint) => string[]) => {
    const right = proportion[place];
    const whiskers = points.map((point) => ({
      ...{ left: across(point.mass) * right - hair, right: across(point.mass) * right + hair },
      ...{ low: up(point.low), high: up(point.high) },
    }));
    const line = targetS === null ? [] : [up(targetS / 60)];
    const target = line.flatMap((at) => [
      { left: 0, right, low: at - hair, high: at + hair },
      ...(place === 'wide' ? [{ left: 0, right: targetNote, low: at, high: at + 0.07 }] : []),
    ]);
    return placeLabels(
      points.map((point) => ({ x: across(point.mass) * right, y: up(point.minutes), notes: notesOf(point) })),
      right,
      [...whiskers, ...target],
    );
  };
  const names = placed('wide', ({ note, short }) => [note, short]);
  const numbers = placed('narrow', ({ short }) => [short]);
  const values = {
    // On a narrow chart points have a number each, and the names stand in a key with that of the target.
    points: points.map((point, index) => ({
      ...point,
      ...names[index]!,
      number: numbers[index]!,
    })),
    target:
      targetS === null
        ? []
        : [{ minutes: targetS / 60, label: `enough: ${withReading(targetS, 'minutes')}` }],
    x_domain: width,
    y_domain: height,
    where: context.assessment.study.carrier.worn ? 'mass on the body' : 'mass',
    mass_unit: context.units.mass.unit,
  };
  const alternative = `${pointWords(context, points)} ${tradeFinding(context)}`;
  return chartContent(context, { name: 'runtime-against-mass', values, alternative, aspectRatio: 0.42 });
}

/** Every point in words. */
function pointWords({ units }: ReportContext, points: TradePoint[]): string {
  return points
    .map(
      ({ note, massKg, minutes }) =>
        `${note}: ${withReading(massKg, units.mass)}, ${fixed(minutes, 0)}\u00a0min.`,
    )
    .join(' ');
}

/** Who is beaten by nobody in everything. */
export function tradeFinding(context: ReportContext): string {
  const free = context.candidates.filter(({ nonDominated }) => nonDominated);
  if (free.length === 0) return context.phrases('trade-finding-none');
  return context.phrases('trade-finding', { free: listed(free.map(({ label }) => label)) });
}

type TradePoint = ReturnType<typeof tradePoint>[number];

function tradePoint(context: ReportContext, candidate: CandidateAssessment) {
  const { bodyMassKg, runtimeS } = candidate.nominal;
  const band = runtimeBandOf(candidate);
  const middleS = band?.median ?? runtimeS;
  if (bodyMassKg === null || middleS === null) return [];
  return [
    {
      mass: context.units.mass.valueOf(bodyMassKg),
      massKg: bodyMassKg,
      minutes: middleS / 60,
      low: (band?.p10 ?? middleS) / 60,
      high: (band?.p90 ?? middleS) / 60,
      role: roleOf(context, candidate),
      free: candidate.nonDominated,
      short: `${candidate.rank}${candidate.passes === false ? ' ✗' : ''}`,
      note: markedName(candidate, mostLetters),
      name: markedName(candidate, mostKeyLetters),
    },
  ];
}

/** A name of at most so many letters; the mark of who fails stays, whatever is cut. */
function markedName(candidate: CandidateAssessment, most: number): string {
  const name = rankedLabel(candidate);
  return candidate.passes === false ? `${shortened(name, most - 2)} ✗` : shortened(name, most);
}

/** Domain round values with room on either side. */
function frame(values: number[], before: number, behind: number): [number, number] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(most - least, Math.abs(most) * 0.1, 1);
  return [Math.max(0, least - span * before), most + span * behind];
}
