import { obstacles } from '../assess/answer.js';
import type { Assessment, CandidateAssessment, MeasurementAdvice } from '../assess/assessment.js';
import { type Blank, blanksOf, blankWords } from '../assess/blanks.js';
import { inDraws } from '../assess/certainty/sureness.js';
import type { Certainty } from '../assess/certainty.js';
import { countText } from '../assess/figures.js';
import type { UnitSystem } from '../quantity/display-units.js';
import { confidenceWords, restatedAssessment } from '../report/index.js';
import { wrapped } from './wrap.js';

/** How many measurements are named. */
const named = 3;

/**
 * What `check` says of a study without errors: whether each candidate passes and how surely, what its sheet cannot
 * mean, the verdict, how the measurements agree, how many figures are the user's own, and what to measure first.
 * @param width columns to write in
 * @param units of what is mechanical or warm
 */
export function checkText(told: Assessment, width: number, units: UnitSystem = 'metric'): string {
  const assessment = restatedAssessment(told, units);
  const { verdict, certainty } = assessment;
  return [
    ...wrapped(assessment.study.about.project, width),
    '',
    ...assessment.candidates.flatMap((candidate) => candidateLines(candidate, certainty, width)),
    '',
    ...wrapped(verdict.sentence, width),
    ...wrapped(confidenceWords(verdict.confidence), width),
    ...calibrationLines(certainty, width),
    '',
    ...blankLines(blanksOf(assessment), width),
    `Figures: ${assessment.figuresGiven} yours, ${assessment.figuresAssumed} assumed.`,
    ...measurements(assessment.nextMeasurements, width),
  ].join('\n');
}

function candidateLines(
  candidate: CandidateAssessment,
  certainty: Certainty | null,
  width: number,
): string[] {
  const { passProbability: passing = null, passesOnPaper = false } =
    certainty?.candidates[candidate.id] ?? {};
  const sure = passing === null ? '' : `; every limit holds in ${inDraws(passing)} of the draws`;
  const verdict = `${candidate.id} ${passesOnPaper ? 'passes on paper' : obstacles(candidate)}${sure}`;
  const odd = candidate.findings.filter((finding) => finding.severity !== 'note');
  return [
    ...wrapped(verdict, width, '', '    '),
    ...odd.flatMap(({ severity, field, message }) =>
      wrapped(`${severity}${field === null ? '' : `, ${field}`}: ${message}`, width, '    ', '    '),
    ),
  ];
}

/** What the readings on the drive of today did, or why they did nothing. */
function calibrationLines(certainty: Certainty | null, width: number): string[] {
  const calibration = certainty?.calibration ?? null;
  if (calibration === null) return [];
  const { contradiction, bandsGiven, temper } = calibration;
  const worth = `${countText(Math.round(calibration.effectiveSampleSize))} of ${countText(calibration.comparedDrawCount)}`;
  const readings = calibration.measured.map(({ quantity }) => quantity.replaceAll('_', ' ')).join(', ');
  if (contradiction !== null) {
    return wrapped(
      `Measured ${readings} and what is computed cannot both be right: they lie apart by ${contradiction.smallestChiSquare.toFixed(1)} where ${contradiction.bound.toFixed(1)} happens once in a hundred times. Look for a wrong figure before trusting any candidate.`,
      width,
    );
  }
  if (!bandsGiven) {
    return wrapped(`Measured ${readings} agrees with draws worth ${worth} only: too few for bands.`, width);
  }
  const softened = temper < 1 ? `, softened to ${Math.round(temper * 100)} %` : '';
  return wrapped(
    `Of the draws of the drive of today those that agree with the measured ${readings}${softened} are worth ${worth}.`,
    width,
  );
}

/** What has to be written into the files before anything is worth measuring. */
function blankLines(blanks: Blank[], width: number): string[] {
  if (blanks.length === 0) return [];
  return [
    'Fill in first:',
    ...blanks.flatMap((blank, index) => [
      ...wrapped(`${index + 1}. ${blankWords(blank)}.`, width, '  ', '     '),
      ...(blank.how === '' ? [] : wrapped(`${blank.how}.`, width, '     ', '     ')),
    ]),
    '',
  ];
}

function measurements(advice: MeasurementAdvice[], width: number): string[] {
  if (advice.length === 0) return ['No measurement would move the comparison.'];
  return [
    'Measured first, these would make the answer surer:',
    ...advice
      .slice(0, named)
      .flatMap((entry, index) => [
        ...wrapped(`${index + 1}. ${owner(entry)}: ${entry.label}`, width, '  ', '     '),
        ...wrapped(`${entry.why}.`, width, '     ', '     '),
        ...wrapped(`${entry.instrument}, ${entry.minutes} min: ${entry.method}`, width, '     ', '     '),
      ]),
  ];
}

function owner({ candidate, field }: MeasurementAdvice): string {
  return candidate === null ? field : `${field} of ${candidate}`;
}
