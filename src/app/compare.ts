import * as say from '../archive/decision-messages.js';
import type { FileOperations } from '../archive/file-operations.js';
import { issueFor } from '../archive/read-archive.js';
import type { DecisionRecord } from '../archive/record.js';
import type { Threads } from '../assess/threads.js';
import type { Issue, Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import type { Templates } from '../report/index.js';
import { studyChanges } from './compare-changes.js';
import { type Explained, explainChanges } from './compare-effects.js';
import { findRecord } from './records-find.js';
import { type RecordedResults, recordedResults } from './records-results.js';
import { type SoundRecord, studyOf } from './records-source.js';
import type { Moved } from './reopen.js';

/** Two records to hold against each other. */
export interface CompareRequest {
  /** Paths of their folders, the earlier first. */
  records: [string, string];
  /** Candidate whose figures are told; null: the one chosen later, or earlier. */
  candidate: string | null;
  templates: Templates;
  version: string;
  progress(step: string): void;
  /** Others that compute draws meanwhile. */
  threads?: Threads;
}

/** What changed between two records, and what each change does to the results. */
export interface Comparison {
  decisions: Moved<DecisionRecord>;
  /** Results as they were filed; null where they cannot be read. */
  filed: Moved<RecordedResults | null>;
  /** Everything below is computed by the present program. */
  explained: Explained;
  /** Whether readings of a measured.csv had a say in either. */
  calibrated: boolean;
  /** The candidate whose figures are told; null when the two have none in common. */
  candidate: { id: string; label: string } | null;
}

/** What came of it; a candidate that nobody has is wrong usage, told in the issues. */
export type Compared = { comparison: Comparison } | { comparison: null };

/**
 * Compares two records: which inputs changed, and how much of the change in the results each explains, alone and
 * all together. Both are computed anew, so that a newer program does not count as a change of inputs.
 */
export function compareRecords(request: CompareRequest, files: FileOperations): Result<Compared> {
  const [first, second] = request.records.map((path) => findRecord(files, path)) as [
    Result<SoundRecord>,
    Result<SoundRecord>,
  ];
  const issues: Issue[] = [...first.issues, ...second.issues];
  if (!first.ok || !second.ok) return { ok: false, issues };
  const [earlier, later] = [first.value, second.value];
  const [studyThen, studyNow] = [studyOf(earlier, request.templates), studyOf(later, request.templates)];
  if (!studyThen.ok || !studyNow.ok)
    return { ok: false, issues: [...issues, ...studyThen.issues, ...studyNow.issues] };

  const shared = studyNow.value.candidates.filter(({ id }) =>
    studyThen.value.candidates.some((entry) => entry.id === id),
  );
  const wanted = request.candidate;
  if (wanted !== null && !shared.some(({ id }) => id === wanted)) {
    const known = shared.map(({ id }) => id);
    const stranger = say.unknownCandidate(wanted, known, nearestName(wanted, known));
    return { ok: true, value: { comparison: null }, issues: [...issues, issueFor('--candidate', stranger)] };
  }
  const chosen = [wanted, later.decision.choice.id, earlier.decision.choice.id, shared[0]?.id];
  const candidate = chosen.flatMap((id) => shared.find((entry) => entry.id === id) ?? [])[0];
  const changes = studyChanges(studyThen.value, studyNow.value);
  request.progress('computing both records');
  return {
    ok: true,
    value: {
      comparison: {
        decisions: { earlier: earlier.decision, later: later.decision },
        filed: { earlier: recordedResults(earlier), later: recordedResults(later) },
        explained: explainChanges(studyThen.value, studyNow.value, changes, request),
        calibrated: [studyThen, studyNow].some(({ value }) => value.measured.length > 0),
        candidate: candidate === undefined ? null : { id: candidate.id, label: candidate.label },
      },
    },
    issues,
  };
}
