import { join } from 'node:path';
import { type DayLog, logFormat, writeLog } from '../archive/day-log.js';
import * as say from '../archive/decision-messages.js';
import type { FileOperations } from '../archive/file-operations.js';
import { issueFor } from '../archive/read-archive.js';
import { withLock } from '../archive/with-lock.js';
import { modelVersion } from '../assess/assessment.js';
import type { Threads } from '../assess/threads.js';
import type { Issue, Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { notADate } from '../problem/table-messages.js';
import { isoDate } from '../quantity/date-text.js';
import type { Templates } from '../report/index.js';
import { simulateCandidate } from '../simulate/candidate.js';
import type { Candidate, Study } from '../study/study.js';
import { findRecord } from './records-find.js';
import { type Known, knownFromDraws, knownNominally } from './records-known.js';
import { findingOf } from './records-log-finding.js';
import { type TypedMeasurement, typedMeasurements } from './records-measured.js';
import { drawnPredictions, nominalPredictions, type Predictions } from './records-predicted.js';
import { recordedResults } from './records-results.js';
import { type SoundRecord, studyOf } from './records-source.js';
import { type Suspect, suspects } from './records-suspects.js';

/** What was measured on the day, for a record of an archive. */
export interface LogRequest {
  archive: string;
  /** Id, or path of its folder. */
  record: string;
  /** `quantity=value`. */
  typed: string[];
  /** Candidate on which it was measured; null: the one that was adopted or kept, else the drive of today. */
  on: string | null;
  date: string;
  by: string;
  note: string;
  templates: Templates;
  version: string;
  /** ISO date-time. */
  now: string;
  progress(step: string): void;
  /** Others that compute draws meanwhile. */
  threads?: Threads;
}

/** What was logged and what it says; or why nothing was. */
export type Logged =
  | { log: DayLog; file: string; study: Study; candidate: Candidate; suspects: Suspect[] }
  | { log: null; why: 'usage' | 'input' | 'write' };

/** What is logged before it is written. */
type Prepared = Exclude<Logged, { log: null }>;

/**
 * Holds what was measured on the day against what the record predicts, finds the input that was most likely wrong,
 * and keeps all of it in a file of its own beside the record.
 */
export function logDay(files: FileOperations, request: LogRequest): Result<Logged> {
  const issues: Issue[] = [];
  const refused = (why: 'usage' | 'input' | 'write', ...more: Issue[]): Result<Logged> => ({
    ok: true,
    value: { log: null, why },
    issues: [...issues, ...more],
  });
  const id = request.record.split(/[/\\]/).findLast((part) => part !== '') ?? '';
  const found = findRecord(files, join(request.archive, id));
  const isStranger = found.issues.some(({ code }) => code === 'unknown-record');
  const typed = typedMeasurements(request.typed);
  issues.push(...typed.issues);
  const date = isoDate(request.date.trim());
  if (date === null) issues.push(issueFor('--date', notADate(request.date)));
  issues.push(...found.issues.map((issue) => (isStranger ? { ...issue, file: '--log' } : issue)));
  if (isStranger || !typed.ok || date === null) return refused('usage');
  if (!found.ok) return refused('input');
  const sound = found.value;
  const read = studyOf(sound, request.templates);
  if (!read.ok) return refused('input', ...read.issues);
  const study = read.value;
  const wanted = request.on ?? measuredOn(sound, study);
  const candidate = study.candidates.find((entry) => entry.id === wanted);
  if (candidate === undefined) {
    const known = study.candidates.map((entry) => entry.id);
    return refused(
      'usage',
      issueFor('--on', say.unknownCandidate(wanted, known, nearestName(wanted, known))),
    );
  }
  request.progress('looking for the input that was wrong');
  const prepared = prepare({ ...request, date }, sound, study, candidate, typed.value);
  for (const { quantity, predicted } of prepared.log.measured)
    if (predicted === null) issues.push(issueFor('--log', say.notPredicted(quantity, candidate.label)));
  const written = withLock(files, request.archive, request.now, () => {
    const file = writeLog(files, request.archive, prepared.log);
    return { ok: true, value: { ...prepared, file }, issues: [] };
  });
  if (!written.ok) return refused('write', ...written.issues);
  return { ok: true, value: written.value, issues: [...issues, ...written.issues] };
}

/** The drive that was most likely in use: what was decided for, or what was there before. */
function measuredOn({ decision: { decision, choice } }: SoundRecord, { baselineId }: Study): string {
  const isInUse = decision === 'adopt' || decision === 'keep';
  return isInUse ? choice.id : (baselineId ?? choice.id);
}

function prepare(
  request: LogRequest,
  record: SoundRecord,
  study: Study,
  candidate: Candidate,
  typed: TypedMeasurement[],
): Prepared {
  const { stored, decision } = record;
  const { known, predicted } = stateOfRecord(record, study, candidate, request.threads);
  const measured = typed.map(({ quantity, value, halfWidth, written }) => {
    const { value: middle, band } = predicted[quantity];
    return { quantity, written, value, halfWidth, predicted: middle, band };
  });
  const found = suspects(study, candidate, known, predicted, typed);
  const log: DayLog = {
    format: logFormat,
    record: decision.id,
    seal: stored.entry!.seal,
    date: request.date,
    by: request.by,
    note: request.note,
    candidate: candidate.id,
    version: request.version,
    modelVersion,
    measured,
    basis: known.basis,
    finding: findingOf(study, measured, found),
  };
  return { log, file: '', study, candidate, suspects: found };
}

/** What a record knows and states of a candidate: by its draws, or nominally where its results hold none. */
function stateOfRecord(
  record: SoundRecord,
  study: Study,
  candidate: Candidate,
  threads: Threads | undefined,
): { known: Known; predicted: Predictions } {
  const filed = recordedResults(record)?.candidates.find(({ id }) => id === candidate.id);
  const isDrawn = filed !== undefined && Object.keys(filed.uncertain).length > 0;
  const drawn = isDrawn ? knownFromDraws(study, candidate, threads) : null;
  if (isDrawn && drawn !== null) return { known: drawn, predicted: drawnPredictions(filed, drawn) };
  const nominal = filed?.nominal ?? simulateCandidate(study, candidate).nominal;
  return {
    known: knownNominally(study, candidate),
    predicted: nominalPredictions(study, candidate, nominal),
  };
}
