import { driveTypes } from '../drives/registry.js';
import type { Assessment, CandidateAssessment } from './assessment.js';
import { limitName } from './criterion-words.js';

/** A blank that keeps something from being judged, with all candidates that lack it. */
export interface Blank {
  /** As in the file: `position_feedback`. */
  field: string;
  /** Ids; empty where the figure belongs to no candidate. */
  candidates: string[];
  meaning: string;
  how: string;
  /** What cannot be said without it: `reaching every position is not judged`. */
  without: string;
}

/** The blank and what it keeps back, as one sentence without its full stop. */
export function blankWords({ field, candidates, meaning, without }: Blank): string {
  const whose = candidates.length === 0 ? '' : ` of ${candidates.join(', ')}`;
  const told = meaning === '' ? '' : `${meaning}; `;
  return `${field}${whose}: ${told}while it is blank, ${without}`;
}

/**
 * What to fill in before anything else: a limit of a candidate that fails none waits for it, or a criterion is left
 * out of the score for want of it.
 */
export function blanksOf({ candidates, study }: Pick<Assessment, 'candidates' | 'study'>): Blank[] {
  const open = candidates.filter(({ passes }) => passes === null);
  const ofLimits = open.flatMap((candidate) =>
    candidate.limits
      .filter(({ passes }) => passes === null)
      .map(({ criterion, missing }) =>
        blankOf(candidate, missing ?? criterion, `${limitName(criterion)} is not judged`),
      ),
  );
  const ofScores = study.criteria.flatMap(({ id, leftOut }) =>
    (leftOut === undefined || leftOut.weightScore === 0 ? [] : leftOut.blanks).map(({ candidate, field }) =>
      blankOf(
        candidates.find((one) => one.id === candidate)!,
        field,
        `the score leaves out ${limitName(id)} for every candidate`,
      ),
    ),
  );
  return merged([...ofLimits, ...ofScores]);
}

function blankOf({ id, type }: CandidateAssessment, field: string, without: string): Blank {
  const columns = driveTypes[type].columns.filter(({ name }) => field.split(', ').includes(name));
  return {
    field,
    candidates: columns.length > 0 ? [id] : [],
    meaning: columns.map(({ meaning }) => meaning).join(', '),
    how: columns[0]?.how ?? '',
    without,
  };
}

/** One entry for the same cell, with all candidates that leave it blank and all that waits for it. */
function merged(blanks: readonly Blank[]): Blank[] {
  return [...new Set(blanks.map(({ field }) => field))].map((field) => {
    const same = blanks.filter((blank) => blank.field === field);
    const together = (texts: string[]) => [...new Set(texts)];
    return {
      ...same[0]!,
      candidates: together(same.flatMap(({ candidates }) => candidates)),
      without: together(same.map(({ without }) => without)).join('; '),
    };
  });
}
