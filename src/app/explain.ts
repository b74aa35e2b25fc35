import type { CalculationLine } from '../assess/assessment.js';
import { beginDraws } from '../assess/certainty/draws.js';
import { working } from '../assess/working.js';
import { readAssumptions } from '../input/read-assumptions.js';
import { readStudy } from '../input/read-study.js';
import type { Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { type ReportWishes, resultsAlsoIn } from '../report/index.js';
import { nominalRun } from '../simulate/candidate.js';
import type { StudyRequest } from './study.js';

/** The working of one candidate; or the ids there are, when nobody has the one asked for. */
export type Explanation =
  | { found: true; label: string; lines: CalculationLine[] }
  | { found: false; known: string[]; nearest: string | null };

/** From files to the working of one candidate, or to the issues that stand in its way. */
export function explainCandidate(
  request: StudyRequest & Pick<ReportWishes, 'units'>,
  id: string,
): Result<Explanation> {
  const read = readStudy(request.files, readAssumptions(request.templates), request.changes);
  if (!read.ok) return read;
  const { value: study, issues } = read;
  const candidate = study.candidates.find((entry) => entry.id === id);
  if (candidate === undefined) {
    const known = study.candidates.map((entry) => entry.id);
    return { ok: true, value: { found: false, known, nearest: nearestName(id, known) }, issues };
  }
  request.progress('computing the candidate');
  const { believed } = beginDraws(study);
  const same = believed.candidates.find((entry) => entry.id === id)!;
  const worked = working(believed, same, nominalRun(study, believed, candidate));
  const lines = resultsAlsoIn(request.units ?? 'metric', believed, worked);
  return { ok: true, value: { found: true, label: candidate.label, lines }, issues };
}
