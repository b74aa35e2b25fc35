import type { CandidateAssessment } from '../../assess/assessment.js';
import { markedLabel, type ReportContext } from '../context.js';
import { fillChart } from '../template/fill-chart.js';
import type { ChartContent } from '../template/fill-template.js';

/** Data of a chart and what it shows in words. */
export interface ChartData {
  /** Name of the template: `charts/<name>.json`. */
  name: string;
  values: Record<string, unknown>;
  alternative: string;
  aspectRatio: number;
}

/** Fills the chart's template. */
export function chartContent(context: ReportContext, data: ChartData): ChartContent {
  const { name, alternative, aspectRatio } = data;
  const specification = fillChart(context.templates, name, data.values);
  const narrow = fillChart(context.templates, name, data.values, 'narrow');
  return { kind: 'chart', name, specification, narrow, alternative, aspectRatio };
}

/**
 * Whether a candidate's loop can be drawn: a move that cannot be made is missing from its series, so that everything
 * behind it would stand too early.
 */
export const playsLoop = ({ nominal, series }: CandidateAssessment): boolean =>
  nominal.loopS !== null && series.loop.timesS.length > 1;

/** How charts name a candidate: rank and label; the rank keeps equal labels apart. */
export function rankedLabel(candidate: CandidateAssessment): string {
  return `${candidate.rank} ${markedLabel(candidate)}`;
}

/** Signs that take nearly the room of two. */
const broad =
  /[MW@]|[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\uff00-\uff60]|\p{Emoji_Presentation}/u;

/** A label of at most so many signs, broad ones counted more; a longer one ends in an ellipsis. */
export function shortened(label: string, most: number): string {
  const signs = [...label];
  const widths = signs.map((sign) => (broad.test(sign) ? 1.7 : 1));
  let room = most;
  const fitting = widths.findIndex((width) => {
    room -= width;
    return room < 0;
  });
  if (fitting < 0) return label;
  return `${signs
    .slice(0, Math.max(1, fitting - 1))
    .join('')
    .trimEnd()}…`;
}

/**
 * A label over at most two lines, broken between words; `\n` marks the break. What does not fit ends in an ellipsis.
 *
 * @param width characters per line
 */
export function brokenLabel(label: string, width: number): string {
  const lines: string[] = [''];
  for (const word of keptWithUnits(label).split(' ')) {
    const line = lines.at(-1)!;
    if (line === '' || line.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${line} ${word}`.trim();
    else lines.push(word);
  }
  const shown = lines.length > 2 ? [lines[0]!, `${lines.slice(1).join(' ')}`] : lines;
  return shown.map((line) => shortened(line, width + 2)).join('\n');
}

/** A number and its unit stay on one line. */
function keptWithUnits(label: string): string {
  return label.replace(/(\d) (?=\p{L}{1,3}(?:[·/]\p{L}{1,2})?(?:[^\p{L}]|$))/gu, '$1\u00a0');
}

/** Letters of an axis title that fit below a narrow chart. */
const mostTitleLetters = 56;

/** Title of an axis below a narrow chart; one that is too long for a line takes two that are about equal. */
export function titleLines(title: string): string[] {
  const isLong = title.length > mostTitleLetters;
  return brokenLabel(title, isLong ? Math.ceil(title.length / 2) + 6 : mostTitleLetters).split('\n');
}

/** A label on one line, as charts with low rows have it. */
export function rowLabel(candidate: CandidateAssessment): string {
  return shortened(rankedLabel(candidate), 44);
}

/**
 * Thins a series to about `count` points and keeps the lowest and highest of every stretch, so that no peak is lost.
 */
export function thinned(times: number[], values: number[], count: number): { time: number; value: number }[] {
  const point = (index: number) => ({ time: times[index]!, value: values[index]! });
  if (times.length <= count) return times.map((_, index) => point(index));
  const stretch = Math.ceil((times.length * 2) / count);
  const kept = new Set([0, times.length - 1]);
  for (let from = 0; from < times.length; from += stretch) {
    let [low, high] = [from, from];
    for (let index = from; index < Math.min(from + stretch, times.length); index++) {
      if (values[index]! < values[low]!) low = index;
      if (values[index]! > values[high]!) high = index;
    }
    kept.add(low).add(high);
  }
  return [...kept].sort((a, b) => a - b).map(point);
}
