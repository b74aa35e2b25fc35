import type { Assessment, MeasurementAdvice } from '../assess/assessment.js';
import { measuredWork } from '../assess/bench-work.js';
import type { UnitSystem } from '../quantity/display-units.js';
import { restatedAssessment } from '../report/index.js';
import { wrapped } from './wrap.js';

/** Most lines to fill in; more than these nobody measures in a season. */
const asked = 16;

/** The line to fill in. */
const blanks = '   Value ____________________  unit __________  ± __________  date __________';

/** A worth below this is not worth a word. */
const visibleWorth = 0.0005;

/**
 * The measuring sheet: what to measure, worth most first, each with instrument, method, precision, and a line to fill
 * in on paper.
 * @param width columns to write in
 * @param units of what is mechanical or warm
 */
export function measureText(assessment: Assessment, width: number, units: UnitSystem = 'metric'): string {
  const { study, nextMeasurements } = restatedAssessment(assessment, units);
  const advice = nextMeasurements.slice(0, asked);
  const head =
    advice.length === 0
      ? 'No single measurement would move the comparison.'
      : 'What to measure, worth most first. Write each answer into the file that its line names, with how exact it is: 0.42 A ±0.02 A.';
  return [
    ...wrapped(study.about.project, width),
    '',
    ...wrapped(head, width),
    ...advice.flatMap((entry, index) => ['', ...sheetEntry(study, entry, index + 1, width)]),
    ...furtherLines(furtherWork(study, advice), width),
  ].join('\n');
}

/** Readings on the drive of today that are neither there nor asked for: they check the calculation. */
function furtherWork({ baselineId, measured }: Assessment['study'], advice: readonly MeasurementAdvice[]) {
  const taken = [
    ...measured.map(({ quantity }) => quantity as string),
    ...advice.filter(({ candidate }) => candidate === baselineId).map(({ field }) => field),
  ];
  if (baselineId === null) return [];
  return Object.entries(measuredWork).filter(([quantity]) => !taken.includes(quantity));
}

function furtherLines(further: ReturnType<typeof furtherWork>, width: number): string[] {
  if (further.length === 0) return [];
  return [
    '',
    ...wrapped('These check the calculation on the drive of today; each goes into measured.csv.', width),
    ...further.flatMap(([quantity, { meaning, how, instrument, minutes }]) => [
      '',
      ...wrapped(`${quantity}: ${meaning}`, width, '', '   '),
      ...wrapped(`With: ${instrument}, ${minutes} min.`, width, '   ', '   '),
      ...wrapped(`How: ${how}.`, width, '   ', '   '),
      blanks,
    ]),
  ];
}

function sheetEntry(
  { candidates }: Assessment['study'],
  entry: MeasurementAdvice,
  number: number,
  width: number,
): string[] {
  const { field, candidate, label, why, instrument, minutes, method, precision, goesInto } = entry;
  const named = candidates.find(({ id }) => id === candidate)?.label ?? '';
  const exact = precision === undefined || precision === '' ? '' : `, to ${precision}`;
  const title = `${number}. ${field}${named === '' ? '' : ` of ${named}`}: ${label}`;
  const text = (line: string) => wrapped(line, width, '   ', '   ');
  return [
    ...wrapped(title, width, '', '   '),
    ...text(`Why: ${why}${choiceOf(entry)}.`),
    ...text(`With: ${instrument}, ${minutes} min${exact}.`),
    ...text(`How: ${method}.`),
    ...text(`Goes into: ${goesInto ?? field}.`),
    blanks,
  ];
}

/** That it would not change the choice, where the reason does not tell how often it would. */
function choiceOf({ worthScore }: MeasurementAdvice): string {
  if (worthScore === undefined || worthScore >= visibleWorth) return '';
  return '; alone it would not change the choice';
}

/** The same for programs, with everything that is worth measuring. */
export function measureData({ study, nextMeasurements }: Assessment): object {
  return {
    project: study.about.project,
    measurements: nextMeasurements.map(adviceData),
    checks: furtherWork(study, nextMeasurements).map(([quantity, { minutes, ...work }]) => ({
      quantity,
      ...work,
      workTimeS: minutes * 60,
    })),
  };
}

/** A measurement with its time in seconds. */
export function adviceData({ minutes, ...advice }: MeasurementAdvice): object {
  return { ...advice, workTimeS: minutes * 60 };
}
