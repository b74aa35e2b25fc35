import { obstacles } from '../assess/answer.js';
import type { Assessment, CandidateAssessment, MeasurementAdvice } from '../assess/assessment.js';
import { wrapped } from './wrap.js';

/** How many measurements are named. */
const named = 3;

/**
 * What `check` says of a study without errors: whether each candidate passes, what its sheet cannot mean, how many
 * figures are the user's own, and what to measure first.
 * @param width columns to write in
 */
export function checkText(assessment: Assessment, width: number): string {
  return [
    assessment.study.about.project,
    '',
    ...assessment.candidates.flatMap((candidate) => candidateLines(candidate, width)),
    '',
    `Figures: ${assessment.figuresGiven} yours, ${assessment.figuresAssumed} assumed.`,
    ...measurements(assessment.nextMeasurements, width),
  ].join('\n');
}

function candidateLines(candidate: CandidateAssessment, width: number): string[] {
  const verdict = `${candidate.id}: ${obstacles(candidate)}`;
  const odd = candidate.findings.filter((finding) => finding.severity !== 'note');
  return [
    ...wrapped(verdict, width, '', '    '),
    ...odd.flatMap(({ severity, field, message }) =>
      wrapped(`${severity}${field === null ? '' : `, ${field}`}: ${message}`, width, '    ', '    '),
    ),
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
