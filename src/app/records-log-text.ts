import type { DayLog, LoggedMeasurement } from '../archive/day-log.js';
import { percent } from '../assess/figures.js';
import { printable, quoted } from '../problem/printable.js';
import { fitted } from '../render/terminal/display-width.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import { measuredDimensions } from '../study/choosing-fields.js';
import type { Study } from '../study/study.js';
import type { Logged } from './records-log.js';
import { measurable } from './records-measured.js';
import { predictionWords } from './records-predicted.js';
import { inputName, shownMeasure, shownValue } from './records-shown.js';
import type { Suspect } from './records-suspects.js';
import { wrapped } from './wrap.js';

/** An explanation that leaves more than this open is none. */
const enoughFraction = 0.5;

/** How many inputs are named. */
const named = 3;

/** Which input was most likely wrong, in one or two sentences. */
export function findingOf(
  study: Study,
  measured: readonly LoggedMeasurement[],
  suspects: readonly Suspect[],
): string {
  const predicted = measured.filter((entry) => entry.predicted !== null);
  if (predicted.length === 0) return 'Nothing that was measured is predicted.';
  if (predicted.every(agrees)) return 'Measured and predicted agree within the spread of the readings.';
  const [first] = suspects;
  if (first === undefined) return 'No input explains the difference inside its own spread.';
  const name = inputName(first.provenance);
  const values = `${shownValue(study, first.provenance, first.value)} instead of ${taken(study, first)}`;
  const share = percent(first.explainedFraction);
  return first.explainedFraction >= enoughFraction
    ? `Most likely wrong is ${name}: ${values} would explain ${share} of the difference.`
    : `No single input explains it inside its own spread; the nearest is ${name}: ${values} would explain ${share}.`;
}

/** What the study took the input for. */
function taken(study: Study, { provenance }: Suspect): string {
  return shownValue(study, provenance, provenance.value as number);
}

function agrees({ value, halfWidth, predicted }: LoggedMeasurement): boolean {
  return Math.abs(predicted! - value) <= halfWidth;
}

/** A log in the list of records: the day, predicted against measured, what was found. */
export function logLines(log: DayLog, width: number): string[] {
  const measured = log.measured.map((entry) => {
    const quantity = measurable.find((known) => known === entry.quantity);
    if (quantity === undefined) return quoted(`${entry.quantity} ${entry.written}`);
    const [read, expected] = [entry.value, entry.predicted].map((value) => shownMeasure(quantity, value));
    return joined(`${quantity} ${read} (predicted ${expected})`);
  });
  const note = log.note === '' ? '' : ` ${quoted(log.note, 200)}`;
  return wrapped(
    printable(`${log.date} on ${log.candidate}: ${measured.join(', ')}. ${log.finding}${note}`),
    width,
    '',
    '  ',
  ).map((line) => line.replaceAll('\u00a0', ' '));
}

/** The text as one word, so that no line ends inside it. */
const joined = (text: string): string => text.replaceAll(' ', '\u00a0');

/** What `records --log` says. */
export function loggedText(logged: Exclude<Logged, { log: null }>, width: number): string {
  const { log, file, study, candidate, suspects } = logged;
  const column = (text: string, columns: number) => fitted(text, columns, 'right');
  const rows = log.measured.map(({ quantity, value, predicted }) => {
    const name = quantity as MeasuredQuantity;
    const off = predicted === null ? '–' : difference(name, value, predicted);
    return [
      fitted(name, 17),
      column(shownMeasure(name, predicted), 12),
      column(shownMeasure(name, value), 12),
      column(off, 8),
      `  ${predictionWords[name]}`,
    ].join('');
  });
  const head = [fitted('', 17), column('predicted', 12), column('measured', 12), column('off', 8)].join('');
  return [
    ...wrapped(printable(`${log.record}, measured on ${log.date} on ${candidate.label}`), width),
    head,
    ...rows,
    '',
    ...wrapped(printable(log.finding), width),
    ...suspects.slice(0, named).flatMap((suspect, index) => suspectLines(study, suspect, index + 1, width)),
    ...wrapped(`Kept in ${file}, beside the record.`, width),
  ].join('\n');
}

/** Of a temperature in kelvins, of anything else as a share of what was predicted. */
function difference(quantity: MeasuredQuantity, value: number, predicted: number): string {
  const isTemperature = measuredDimensions[quantity] === 'temperature';
  if (!isTemperature && predicted === 0) return '–';
  const off = Math.round(
    isTemperature ? value - predicted : ((value - predicted) / Math.abs(predicted)) * 100,
  );
  return `${off < 0 ? '−' : '+'}${Math.abs(off)} ${isTemperature ? 'K' : '%'}`;
}

function suspectLines(study: Study, suspect: Suspect, place: number, width: number): string[] {
  const { provenance, value, explainedFraction, measure } = suspect;
  const shift = `${taken(study, suspect)} → ${shownValue(study, provenance, value)}`;
  const text = `${place}. ${inputName(provenance)}: ${shift} explains ${percent(explainedFraction)}`;
  const how =
    measure === null ? [] : wrapped(printable(`${measure.instrument}: ${measure.how}`), width, '     ');
  return [...wrapped(printable(text), width, '  ', '     '), ...how];
}

/** The same for programs. */
export function loggedData({ log, file, suspects }: Exclude<Logged, { log: null }>): object {
  return {
    file,
    log,
    suspects: suspects.map(({ provenance, value, explainedFraction, predicted, measure }) => ({
      field: provenance.field,
      owner: provenance.owner,
      taken: provenance.value,
      value,
      explainedFraction,
      predicted,
      measure,
    })),
  };
}
