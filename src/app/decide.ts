import type { BagFile } from '../archive/bag.js';
import { bytesOf, sha256Of } from '../archive/digest.js';
import type { FileOperations } from '../archive/file-operations.js';
import { type FiledRecord, fileRecord } from '../archive/file-record.js';
import type { LedgerEntry } from '../archive/ledger.js';
import { payloadNames } from '../archive/payload-names.js';
import { ledgerAt, readArchive } from '../archive/read-archive.js';
import type { RecordedInput, UnfiledDecision } from '../archive/record.js';
import type { Assessment } from '../assess/assessment.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import type { Result } from '../problem/issue.js';
import { checkedDecision, type DecisionWords } from './decide-checks.js';
import { assessStudy, type ReportFiles, reportFiles, type StudyRequest } from './study.js';

/** A decision to make and file. */
export interface DecideRequest extends StudyRequest {
  words: DecisionWords;
  archive: string;
  /** ISO date-time of the filing. */
  now: string;
  /** ISO date-time that the report carries, from the date of the study. */
  reportDate(studyDate: string): string;
}

/** What came of it: filed, or why not. What was wrong stands in the issues. */
export type Decided =
  | { filed: FiledRecord; missingCharacters: ReportFiles['missingCharacters'] }
  | { filed: null; why: 'usage' | 'write' };

/** How the two slow steps are done; tests put quick ones in their place. */
export interface DecideTools {
  assess(request: StudyRequest): Result<Assessment>;
  report: typeof reportFiles;
}

/**
 * Decides and files: assesses the study, checks the decision against it, makes the report, and files all of it with
 * the inputs as they were. Issues of the study stand in the way as they do for a report.
 */
export async function decide(
  request: DecideRequest,
  files: FileOperations,
  tools: DecideTools = { assess: assessStudy, report: reportFiles },
): Promise<Result<Decided>> {
  const assessed = tools.assess(request);
  if (!assessed.ok) return assessed;
  const assessment = assessed.value;
  const checked = checkedDecision(request.words, assessment, recordsBefore(files, request.archive));
  const issues = [...assessed.issues, ...checked.issues];
  if (!checked.ok) return { ok: true, value: { filed: null, why: 'usage' }, issues };

  const date = request.reportDate(assessment.study.about.date);
  const report = await tools.report(assessment, request, { page: 'A4', date });
  const kept = keptInputs(request);
  const decision: UnfiledDecision = {
    question: assessment.study.about.question,
    project: assessment.study.about.project,
    ...checked.value,
    verdict: assessment.verdict.sentence,
    confidence: assessment.verdict.confidence.sentence,
    leader: assessment.leader,
    baseline: assessment.baseline,
    version: assessment.version,
    modelVersion: assessment.modelVersion,
    inputHash: assessment.inputHash,
    inputs: kept.inputs,
    assumptions: kept.assumptions,
  };
  request.progress('filing the record');
  const filed = fileRecord(files, {
    archive: request.archive,
    decision,
    payload: [...kept.files, ...report.files.map(({ name, bytes }) => ({ path: name, bytes }))],
    now: request.now,
    software: `holdwright ${request.version}`,
  });
  const all = [...issues, ...filed.issues];
  if (!filed.ok) return { ok: true, value: { filed: null, why: 'write' }, issues: all };
  const { missingCharacters } = report;
  return { ok: true, value: { filed: filed.value, missingCharacters }, issues: all };
}

/** What an archive lists; from the records themselves where the ledger cannot be read. */
function recordsBefore(files: FileOperations, archive: string): LedgerEntry[] {
  const listed = ledgerAt(files, archive);
  if (listed !== null) return listed;
  return readArchive(files, archive)?.records.flatMap(({ entry }) => entry ?? []) ?? [];
}

interface KeptInputs {
  inputs: RecordedInput[];
  assumptions: RecordedInput | null;
  files: BagFile[];
}

/** The inputs byte for byte under names that every system takes, and where each is to be found. */
function keptInputs({ files, templates }: StudyRequest): KeptInputs {
  const inOrder = [...files].sort((a, b) => (a.name < b.name ? -1 : 1));
  const names = payloadNames(inOrder.map(({ name }) => name));
  const kept = inOrder.map((file, index) => keptAs(file, `inputs/${names[index]}`));
  const table = templates[assumptionsFile];
  const assumed =
    table === undefined ? null : keptAs({ name: assumptionsFile, bytes: bytesOf(table) }, assumptionsFile);
  return {
    inputs: kept.map(({ recorded }) => recorded),
    assumptions: assumed?.recorded ?? null,
    files: [...kept, ...(assumed === null ? [] : [assumed])].map(({ file }) => file),
  };
}

function keptAs({ name, bytes }: InputFile, path: string): { recorded: RecordedInput; file: BagFile } {
  return { recorded: { name, file: path, sha256: sha256Of(bytes) }, file: { path, bytes } };
}
