import type { CandidateAssessment } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import { type ReportContext, roleOf, runtimeBandOf } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { banded, bandedWithUnit } from '../words/bands.js';
import { duration, none, withReading } from '../words/figures.js';
import { brokenLabel, chartContent, rankedLabel } from './chart-content.js';

/** One candidate in minutes; low, middle and high fall together without draws. */
interface Row {
  label: string;
  low: number;
  minutes: number;
  high: number;
  nominal: number | null;
  /** Where the note begins in the chart without intervals; with them all notes stand in a column at the right. */
  start: number;
  role: string;
  passes: boolean;
  note: string;
}

/** Runtime on one pack per candidate with its interval, against the time asked for and that which would be enough. */
export function runtimeChart(context: ReportContext): ChartContent {
  const targetS = context.assessment.study.targetRuntimeS;
  const rows = context.candidates.map((candidate) => runtimeRow(context, candidate));
  const marks = marksOf(context);
  const longest = Math.max(
    1,
    ...marks.map(({ minutes }) => minutes),
    ...rows.flatMap((row) => [row.high, row.nominal ?? 0]),
  );
  const hasBands = rows.some((row) => row.high > row.low);
  const domainEnd = longest * (hasBands ? 1.75 : 1.34);
  const values = {
    rows,
    // White paper under notes that one of the lines would run through.
    masks: rows
      .filter((row) => marks.some(({ minutes }) => crosses(row, minutes, domainEnd)))
      .map((row) => ({ ...row, end: noteEnd(row, domainEnd) })),
    target: marks.filter(({ kind }) => kind === 'enough'),
    limit: marks.filter(({ kind }) => kind === 'limit'),
    labels: markLabels(marks, domainEnd),
    domain_end: domainEnd,
  };
  const finding = runtimeFinding(context, targetS);
  const limit = withReading(limitS(context), 'minutes');
  const alternative =
    limit === none
      ? finding
      : context.phrases('runtime-finding-limit', { finding, limit: `at least ${limit}` });
  const aspectRatio = 0.085 + rowHeight(context.candidates.length) * context.candidates.length;
  const name = hasBands ? 'runtime-interval-against-target' : 'runtime-against-target';
  return chartContent(context, { name, values, alternative, aspectRatio });
}

/** A line through all candidates: the time that a limit asks for, or the one that would be enough. */
interface Mark {
  kind: 'limit' | 'enough';
  minutes: number;
  text: string;
}

function limitS({ assessment }: ReportContext): number | null {
  const must = assessment.study.criteria.find(({ id }) => id === 'runtime')?.must ?? null;
  return must?.direction === 'at-least' ? must.bound : null;
}

/** From left to right. */
function marksOf(context: ReportContext): Mark[] {
  const mark = (kind: Mark['kind'], timeS: number | null, word: string): Mark[] =>
    timeS === null ? [] : [{ kind, minutes: timeS / 60, text: `${word} ${withReading(timeS, 'minutes')}` }];
  const marks = [
    ...mark('limit', limitS(context), 'at least'),
    ...mark('enough', context.assessment.study.targetRuntimeS, 'enough:'),
  ];
  return marks.sort((a, b) => a.minutes - b.minutes);
}

/** Lines nearer than this share of the chart's width have no room for a label each. */
const labelRoom = 0.2;

/** The names above the lines; those of lines close together share one, which ends at the right line. */
function markLabels(marks: Mark[], domainEnd: number) {
  const [left, right] = marks;
  if (left === undefined) return [];
  if (right === undefined) return [{ minutes: left.minutes, label: left.text, align: 'center' }];
  if (right.minutes - left.minutes < labelRoom * domainEnd) {
    return [{ minutes: right.minutes, label: `${left.text}, ${right.text}`, align: 'right' }];
  }
  return [
    { minutes: left.minutes, label: left.text, align: 'right' },
    { minutes: right.minutes, label: right.text, align: 'center' },
  ];
}

function runtimeRow(context: ReportContext, candidate: CandidateAssessment): Row {
  const { runtimeS } = candidate.nominal;
  const band = runtimeBandOf(candidate);
  const failed = candidate.limits.some((limit) => limit.passes === false);
  const minutes = (value: number | null | undefined): number => (value ?? 0) / 60;
  const figure = bandedWithUnit(band, runtimeS, 'minutes');
  const runs = band !== null || runtimeS !== null;
  const high = minutes(band?.p90 ?? runtimeS);
  return {
    label: brokenLabel(rankedLabel(candidate), 32),
    low: minutes(band?.p10 ?? runtimeS),
    minutes: minutes(band?.median ?? runtimeS),
    high,
    nominal: runtimeS === null ? null : minutes(runtimeS),
    start: Math.max(high, minutes(runtimeS)),
    role: roleOf(context, candidate),
    passes: !failed,
    // Beside the column of intervals there is no room for it: hollow bars say the same.
    note: `${runs ? figure : 'no runtime'}${failed && runs && band === null ? ' ✗ fails' : ''}`,
  };
}

function runtimeFinding(context: ReportContext, targetS: number | null): string {
  const { phrases } = context;
  const running = context.candidates.filter(
    (candidate) => candidate.nominal.runtimeS !== null || runtimeBandOf(candidate) !== null,
  );
  if (running.length === 0) return phrases('runtime-finding-none');
  const each = listed(running.map((one) => `${one.label} ${runtimeText(one)}`));
  if (targetS === null) return phrases('runtime-finding', { each });
  const enough = running.filter((one) => middleS(one) >= targetS).length;
  const counts = { enough: String(enough), all: String(context.candidates.length) };
  return phrases('runtime-finding-target', { each, target: duration(targetS), ...counts });
}

function middleS(candidate: CandidateAssessment): number {
  return runtimeBandOf(candidate)?.median ?? candidate.nominal.runtimeS ?? 0;
}

function runtimeText(candidate: CandidateAssessment): string {
  return banded(runtimeBandOf(candidate), candidate.nominal.runtimeS, duration);
}

function noteEnd(row: Row, domainEnd: number): number {
  return row.start + (row.note.length + 1.5) * signWidth * domainEnd;
}

function crosses(row: Row, minutes: number, domainEnd: number): boolean {
  return row.start < minutes && noteEnd(row, domainEnd) > minutes;
}

/** Width of a letter as a share of the chart's width, about. */
const signWidth = 0.021;

/** Height of a row as a share of the page's width: roomier when there are few. */
function rowHeight(count: number): number {
  return Math.min(0.044, Math.max(0.03, 0.25 / count));
}
