import { readFileSync } from 'node:fs';
import { type Decided, type DecideRequest, type DecideTools, decide } from '../../src/app/decide.js';
import type { DecisionWords } from '../../src/app/decide-checks.js';
import { inputHash, inputsAsRead } from '../../src/app/input-hash.js';
import { type ReportFiles, resultsText, type StudyRequest } from '../../src/app/study.js';
import { bytesOf, textOf } from '../../src/archive/digest.js';
import { assess } from '../../src/assess/assess.js';
import type { Assessment } from '../../src/assess/assessment.js';
import { assumptionsFile, type InputFile } from '../../src/input/files.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import type { Result } from '../../src/problem/issue.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { demoFiles } from '../app/demo.js';
import { quickDisk } from './fixture.js';

/** The drive of today and a worm drive, out of a demo; with one file changed where asked. */
export function smallStudy(changes: Record<string, (text: string) => string> = {}): InputFile[] {
  return demoFiles('lantern-parade').map(({ name, bytes }) => {
    const text = name === 'candidates.csv' ? twoCandidates(textOf(bytes)) : textOf(bytes);
    const change = changes[name];
    const changed = change === undefined ? text : change(text);
    if (change !== undefined && changed === text) throw new Error(`the change leaves ${name} as it was`);
    return { name, bytes: bytesOf(changed) };
  });
}

const twoCandidates = (text: string): string =>
  text
    .split('\n')
    .filter((line) => /^(#|id,|servo-now,|worm-driver,)/.test(line))
    .join('\n');

/** The table of assumptions that ships. */
export function assumptionsTable(): string {
  return readFileSync(new URL('../../templates/assumptions.csv', import.meta.url), 'utf8');
}

/** Judges a study on sketches of its candidates, without draws: quick, and the same every time. */
export function quickAssess(request: StudyRequest): Result<Assessment> {
  const read = readStudy(request.files, readAssumptions(request.templates), request.changes);
  if (!read.ok) return read;
  const study = read.value;
  const runs = study.candidates.map((candidate) => simulateCandidate(study, candidate));
  const inputs = inputsAsRead(request.files);
  const hash = inputHash(inputs, request.templates[assumptionsFile] ?? '', request.changes);
  const value = assess(study, runs, { version: request.version, inputHash: hash, inputs });
  return { ok: true, value, issues: read.issues };
}

/** Results as they are filed, and a PDF in name only. */
export async function quickReport(assessment: Assessment): Promise<ReportFiles> {
  return {
    files: [
      { name: 'report.pdf', bytes: bytesOf('%PDF-1.7\n%%EOF\n') },
      { name: 'results.json', bytes: bytesOf(resultsText(assessment)) },
    ],
    missingCharacters: [],
  };
}

export const tools: DecideTools = { assess: quickAssess, report: quickReport };

/** A decision to file; what a test does not ask for is as here. */
export function decideRequest(
  archive: string,
  files: InputFile[],
  words: Partial<DecisionWords> = {},
  version = '0.1.0',
): DecideRequest {
  return {
    files,
    templates: {},
    changes: [],
    version,
    progress() {},
    archive,
    now: '2026-03-14T20:00:00Z',
    reportDate: () => '2026-03-14T00:00:00Z',
    words: {
      choose: 'worm-driver',
      decision: 'adopt',
      because: 'it holds for free',
      by: null,
      date: '2026-03-14',
      lookAgain: null,
      supersedes: null,
      ...words,
    },
  };
}

/** Files a decision about a study; the folder of its record. */
export async function decided(request: DecideRequest, made: DecideTools = tools): Promise<string> {
  const result = await decide(request, quickDisk, made);
  const value: Decided | null = result.ok ? result.value : null;
  if (value === null || value.filed === null)
    throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return value.filed.folder;
}
