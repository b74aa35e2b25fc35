import type { PreparedCandidate } from '../../simulate/candidate.js';
import type { CandidateRun } from '../../simulate/outcome.js';
import { findSource, type SourceId } from '../../sources/sources.js';
import type { Candidate, Study } from '../../study/study.js';
import type { CalculationLine } from '../assessment.js';

/** What the working of one candidate is written from. */
export interface Worked {
  study: Study;
  candidate: Candidate;
  run: CandidateRun;
  prepared: PreparedCandidate;
}

/** A heading under which lines are written one by one. */
export type LineWriter = (
  quantity: string,
  equation: string,
  numbers: string,
  result: string,
  source: string,
) => CalculationLine;

/** Writes lines under one heading. */
export function section(heading: string): LineWriter {
  return (quantity, equation, numbers, result, source) => ({
    section: heading,
    quantity,
    equation,
    numbers,
    result,
    source,
  });
}

/** An equation number with the publication behind it, short: `M5; A. Hughes, B. Drury: Electric Motors and Drives`. */
export function from(equation: string, id: SourceId): string {
  const source = findSource(id);
  if (source === undefined) return equation;
  return `${equation}; ${source.authors}: ${source.title.split(':')[0]}`;
}
