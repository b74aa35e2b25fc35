import type { FileOperations } from '../archive/file-operations.js';
import type { DecisionRecord } from '../archive/record.js';
import type { Assessment } from '../assess/assessment.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import { readAssumptions } from '../input/read-assumptions.js';
import { readStudy } from '../input/read-study.js';
import type { Result } from '../problem/issue.js';
import { type StudyChange, studyChanges } from './compare-changes.js';
import { inputsAsRead } from './input-hash.js';
import { type MovedFigure, movedFigures } from './moved-figures.js';
import { type RecordedCandidate, recordedCandidates } from './records-figures.js';
import { findRecord } from './records-find.js';
import { recordedResults } from './records-results.js';
import { type SoundRecord, studyOf, templatesOf } from './records-source.js';
import { assessStudy, type StudyRequest } from './study.js';

/** A record to open again. */
export interface ReopenRequest extends Omit<StudyRequest, 'files' | 'changes'> {
  /** Path of the record's folder. */
  record: string;
  /** Files of the study as it stands now; null: the inputs of the record. */
  files: InputFile[] | null;
}

/** One thing then and now. */
export interface Moved<T> {
  earlier: T;
  later: T;
}

/** What moved since a record was filed. */
export interface Reopened {
  decision: DecisionRecord;
  /** Whether the study as it stands now was used, or the inputs of the record. */
  ofToday: boolean;
  files: { name: string; state: 'same' | 'changed' | 'new' | 'gone' }[];
  inputHash: Moved<string>;
  /** Whether the table of assumptions that is used now differs from the record's. */
  assumptionsDiffer: boolean;
  /** Values that the files or the table say differently. */
  values: StudyChange[];
  version: Moved<string>;
  modelVersion: Moved<string>;
  /** null when the results of the record cannot be read. */
  figures: MovedFigure[] | null;
  /** Ids in rank order. */
  ranking: Moved<string[] | null>;
  leader: Moved<string | null>;
  /** The answer of the program, in one sentence. */
  verdict: Moved<string>;
  choice: Moved<RecordedCandidate | null>;
}

/**
 * Recomputes a record from itself, or holds it against the study as it stands now, and says what moved.
 *
 * From itself, the record's own table of assumptions counts, so that nothing moves but what the program computes;
 * against the study of now, the present table does.
 */
export function reopen(
  request: ReopenRequest,
  files: FileOperations,
  assess: (request: StudyRequest) => Result<Assessment> = assessStudy,
): Result<Reopened> {
  const found = findRecord(files, request.record);
  if (!found.ok) return found;
  const record = found.value;
  const ofToday = request.files !== null;
  const own = templatesOf(record, request.templates);
  const again: StudyRequest = {
    files: request.files ?? record.files,
    templates: ofToday ? request.templates : own,
    changes: [],
    version: request.version,
    progress: request.progress,
  };
  const assessed = assess(again);
  if (!assessed.ok) return assessed;
  const later = assessed.value;
  const { decision } = record;
  const earlier = recordedResults(record);
  const candidates = recordedCandidates(later);
  return {
    ok: true,
    value: {
      decision,
      ofToday,
      files: fileStates(record, again.files),
      inputHash: { earlier: decision.inputHash, later: later.inputHash },
      assumptionsDiffer: record.assumptions !== (request.templates[assumptionsFile] ?? null),
      values: ofToday ? changedValues(record, again, request) : [],
      version: { earlier: decision.version, later: later.version },
      modelVersion: { earlier: decision.modelVersion, later: later.modelVersion },
      figures: earlier === null ? null : movedFigures(earlier, candidates),
      ranking: { earlier: idsOf(earlier?.candidates), later: idsOf(later.candidates) },
      leader: { earlier: decision.leader, later: later.leader },
      verdict: { earlier: decision.verdict, later: later.verdict.sentence },
      choice: {
        earlier: earlier?.candidates.find(({ id }) => id === decision.choice.id) ?? null,
        later: candidates.find(({ id }) => id === decision.choice.id) ?? null,
      },
    },
    issues: [...found.issues, ...assessed.issues],
  };
}

const idsOf = (candidates: readonly { id: string }[] | undefined): string[] | null =>
  candidates?.map(({ id }) => id) ?? null;

function fileStates({ decision }: SoundRecord, later: readonly InputFile[]): Reopened['files'] {
  const hashes = new Map(inputsAsRead([...later]).map(({ name, sha256 }) => [name, sha256]));
  const before = decision.inputs.map(({ name, sha256 }) => {
    const hash = hashes.get(name);
    hashes.delete(name);
    const state: Reopened['files'][number]['state'] =
      hash === undefined ? 'gone' : hash === sha256 ? 'same' : 'changed';
    return { name, state };
  });
  return [...before, ...[...hashes.keys()].map((name) => ({ name, state: 'new' as const }))];
}

/** Values that moved; empty when the record's own study can no longer be read by this program. */
function changedValues(
  record: SoundRecord,
  again: StudyRequest,
  { templates }: ReopenRequest,
): StudyChange[] {
  const before = studyOf(record, templates);
  const after = readStudy(again.files, readAssumptions(again.templates), []);
  return before.ok && after.ok ? studyChanges(before.value, after.value) : [];
}
