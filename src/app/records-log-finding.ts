import type { LoggedMeasurement } from '../archive/day-log.js';
import { percent } from '../assess/figures.js';
import type { Study } from '../study/study.js';
import { agrees, placeOf } from './records-band.js';
import { inputName, shownInput } from './records-shown.js';
import type { Suspect } from './records-suspects.js';

/** An explanation that leaves more than this open is none. */
const enoughFraction = 0.5;

/** Which input was most likely wrong, in one or two sentences. */
export function findingOf(
  study: Study,
  measured: readonly LoggedMeasurement[],
  suspects: readonly Suspect[],
): string {
  const predicted = measured.filter((entry) => entry.predicted !== null);
  if (predicted.length === 0) return 'Nothing that was measured is predicted.';
  if (predicted.every(agrees)) return agreementWords(predicted);
  const [first] = suspects;
  if (first === undefined) return 'No input explains the difference inside what is known of it.';
  const name = inputName(first.input);
  const [supposed, middle] = [first.value, first.known.median].map((value) =>
    shownInput(study, first.input, value),
  );
  const values = `${supposed} instead of ${middle}`;
  const share = percent(first.explainedFraction);
  return first.explainedFraction >= enoughFraction
    ? `Most likely wrong is ${name}: ${values} would explain ${share} of the difference.`
    : `No single input explains it inside what is known of it; the nearest is ${name}: ${values} would explain ${share}.`;
}

function agreementWords(predicted: readonly LoggedMeasurement[]): string {
  const places = predicted.map(placeOf);
  if (places.every((place) => place === 'inside'))
    return 'Measured and predicted agree: inside what eight draws in ten lie between.';
  return 'Measured and predicted agree within the spread of the readings.';
}
