import type { DayLog } from '../archive/day-log.js';
import { countText, percent } from '../assess/figures.js';
import { printable, quoted } from '../problem/printable.js';
import { fitted } from '../render/terminal/display-width.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import { measuredDimensions } from '../study/choosing-fields.js';
import type { Study } from '../study/study.js';
import { placeOf } from './records-band.js';
import type { Logged } from './records-log.js';
import { measurable } from './records-measured.js';
import { predictionWords } from './records-predicted.js';
import { inputName, shownBand, shownInput, shownMeasure } from './records-shown.js';
import type { Suspect } from './records-suspects.js';
import { wrapped } from './wrap.js';

/** How many inputs are named. */
const named = 3;

/** A log in the list of records: the day, predicted against measured, what was found. */
export function logLines(log: DayLog, width: number): string[] {
  const measured = log.measured.map((entry) => {
    const quantity = measurable.find((known) => known === entry.quantity);
    if (quantity === undefined) return quoted(`${entry.quantity} ${entry.written}`);
    const [read, expected] = [entry.value, entry.predicted].map((value) => shownMeasure(quantity, value));
    const band = entry.band ? `, ${shownBand(quantity, entry.band)}` : '';
    return joined(`${quantity} ${read} (predicted ${expected}${band})`);
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

/** Columns of the table of readings: name, predicted, its band, measured, how far off. */
const widths = { name: 17, figure: 12, band: 17, off: 8 };

/** What `records --log` says. */
export function loggedText(logged: Exclude<Logged, { log: null }>, width: number): string {
  const { log, file, study, candidate, suspects } = logged;
  const isDrawn = log.basis === 'draws';
  const row = (name: string, predicted: string, band: string, measured: string, off: string, place = '') =>
    [
      fitted(name, widths.name),
      fitted(predicted, widths.figure, 'right'),
      isDrawn ? fitted(band, widths.band, 'right') : '',
      fitted(measured, widths.figure, 'right'),
      fitted(off, widths.off, 'right'),
      `  ${place}`,
    ]
      .join('')
      .trimEnd();
  const rows = log.measured.map((entry) => {
    const { value, predicted, band } = entry;
    const name = entry.quantity as MeasuredQuantity;
    const off = predicted === null ? '–' : difference(name, value, predicted);
    const shown = band ? shownBand(name, band) : '–';
    return row(
      name,
      shownMeasure(name, predicted),
      shown,
      shownMeasure(name, value),
      off,
      placeOf(entry) ?? '',
    );
  });
  const meant = log.measured.map(
    ({ quantity }) => `${quantity}, ${predictionWords[quantity as MeasuredQuantity]}`,
  );
  return [
    ...wrapped(printable(`${log.record}, measured on ${log.date} on ${candidate.label}`), width),
    row('', 'predicted', '10–90 %', 'measured', 'off'),
    ...rows,
    ...wrapped(`Counted: ${meant.join('; ')}.`, width, '', '  '),
    ...wrapped(isDrawn ? drawnWords(study) : nominalWords, width, '', '  '),
    '',
    ...wrapped(printable(log.finding), width),
    ...suspects.slice(0, named).flatMap((suspect, index) => suspectLines(study, suspect, index + 1, width)),
    ...wrapped(`Kept in ${file}, beside the record.`, width),
  ].join('\n');
}

/** Where predictions and bands come from. */
const drawnWords = ({ drawsCount, measured }: Study): string =>
  `Predicted: median of the ${countText(drawsCount)} draws of the record${measured.length > 0 ? ', after calibration by its measured.csv' : ''}.`;

const nominalWords =
  'Predicted: nominal figures, since the results of the record give no bands; whether a reading lies inside one cannot be said.';

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
  const { input, known, value, explainedFraction, measure } = suspect;
  const [low, middle, high, supposed] = [known.p10, known.median, known.p90, value].map((figure) =>
    shownInput(study, input, figure),
  );
  const text = `${place}. ${inputName(input)}: ${supposed} explains ${percent(explainedFraction)}; known as ${middle} (${low} to ${high})`;
  const how =
    measure === null ? [] : wrapped(printable(`${measure.instrument}: ${measure.how}`), width, '     ');
  return [...wrapped(printable(text), width, '  ', '     '), ...how];
}

/** The same for programs. */
export function loggedData({ log, file, suspects }: Exclude<Logged, { log: null }>): object {
  return {
    file,
    log,
    places: Object.fromEntries(log.measured.map((entry) => [entry.quantity, placeOf(entry)])),
    suspects: suspects.map(({ input: { field, owner }, ...suspect }) => ({ field, owner, ...suspect })),
  };
}
