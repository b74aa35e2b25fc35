import type { ReportContext } from '../context.js';
import type { Values } from '../template/fill-template.js';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** `14 March 2026` from an ISO date; anything else as it stands. */
export function longDate(date: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(date);
  const month = match ? months[Number(match[2]) - 1] : undefined;
  return match && month ? `${Number(match[3])}\u00a0${month}\u00a0${match[1]}` : date;
}

/** What the study says about itself; for titles and letterheads. */
export function aboutValues(context: ReportContext): Values {
  const { about } = context.assessment.study;
  return {
    question: about.question,
    project: about.project,
    prepared_by: about.preparedBy,
    prepared_for: about.preparedFor,
    date: longDate(context.date),
  };
}
