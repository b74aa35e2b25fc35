import type { Assessment } from '../assess/assessment.js';
import { conclude } from '../assess/conclude.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import { howToMeasure } from '../input/how-to-measure.js';
import { readAssumptions } from '../input/read-assumptions.js';
import { readPointsOfView } from '../input/read-points-of-view.js';
import { readStudy } from '../input/read-study.js';
import type { Result } from '../problem/issue.js';
import { renderJson } from '../render/json/render-json.js';
import { renderTerminal, type TerminalOptions } from '../render/terminal/render-terminal.js';
import { buildReport, type ReportWishes, summarise, type Templates, toResults } from '../report/index.js';
import { simulateCandidate } from '../simulate/candidate.js';
import { inputHash, inputsAsRead } from './input-hash.js';

/** What a run starts from: the study's files, the templates, and what the user wants to try instead. */
export interface StudyRequest {
  files: InputFile[];
  templates: Templates;
  /** `item=value` pairs that replace what the files say. */
  changes: string[];
  /** Version of the program. */
  version: string;
  /** Told as each step begins. */
  progress(step: string): void;
}

/** How a report is set. */
export interface ReportSetting {
  page: 'A4' | 'Letter';
  /** ISO date-time that the report carries. */
  date: string;
}

/** What `reportFiles` makes. */
export interface ReportFiles {
  files: InputFile[];
  /** Signs that no font has, each with a text it stood in. */
  missingCharacters: { character: string; context: string }[];
}

/*
   files ──1 read──► study ──2 simulate──► runs ──3 judge──► assessment
                                                                 │ 4 tell
                                              bytes ◄──5 render── document
*/

/**
 * From files to the assessment, or to the issues that stand in its way.
 * @param depth `ranking` leaves out what only the report shows
 */
export function assessStudy(
  request: StudyRequest,
  depth: 'ranking' | 'report' = 'report',
): Result<Assessment> {
  // 1 Read: text → a checked study in SI, or every issue of every file.
  const { progress, templates, files, changes, version } = request;
  progress('reading the study');
  const assumptions = readAssumptions(templates);
  const read = readStudy(files, assumptions, changes);
  if (!read.ok) return read;
  const study = read.value;
  const { views, issues: viewIssues } = readPointsOfView(templates, study, assumptions);
  const issues = [...read.issues, ...viewIssues];
  if (viewIssues.some(({ severity }) => severity === 'error')) return { ok: false, issues };

  // 2 Simulate: what each candidate does with the figures as they stand, before anybody judges it.
  progress('computing the candidates');
  const runs = study.candidates.map((candidate) => simulateCandidate(study, candidate));

  // 3 Judge: draws of what is not exactly known, limits, scores, lesser changes, the day, and the verdict.
  const inputs = inputsAsRead(files);
  const hash = inputHash(inputs, templates[assumptionsFile] ?? '', changes);
  const assessment = conclude(
    study,
    runs,
    { version, inputHash: hash, inputs },
    {
      simulate: (changed, candidate) => simulateCandidate(changed, candidate, 'sketch'),
      simulateFully: simulateCandidate,
      howToMeasure,
      views,
      depth,
      progress,
    },
  );
  return { ok: true, value: assessment, issues };
}

/** The assessment as the files of a report: `report.pdf` and `results.json`. */
export async function reportFiles(
  assessment: Assessment,
  request: Pick<StudyRequest, 'templates' | 'progress'> & ReportWishes,
  { page, date }: ReportSetting,
): Promise<ReportFiles> {
  // 4 Tell: headings, tables, charts and cautions as data, in the wording of the templates.
  request.progress('writing the report');
  const document = buildReport(assessment, request.templates, date, request);

  // 5 Render: bytes. Fonts and charts are loaded only here.
  request.progress('drawing pages and charts');
  const { loadFonts, renderPdf } = await import('../render/pdf/index.js');
  const pdf = await renderPdf(document, { fonts: await loadFonts(), pageSize: page });
  const results = new TextEncoder().encode(resultsText(assessment));
  return {
    files: [
      { name: 'report.pdf', bytes: pdf.bytes },
      { name: 'results.json', bytes: results },
    ],
    missingCharacters: pdf.missingCharacters,
  };
}

/**
 * Puts every sentence of the report together and throws it away: for who edits the wording.
 *
 * @throws TemplateError with everything that the templates ask for and nobody knows
 */
export function checkWording(
  assessment: Assessment,
  request: Pick<StudyRequest, 'templates'> & ReportWishes,
): void {
  buildReport(assessment, request.templates, '', request);
}

/** The results as JSON text, the contract of whoever reads them with a program. */
export function resultsText(assessment: Assessment): string {
  return renderJson(toResults(assessment));
}

/** The ranking in few lines, for a terminal. */
export function rankingText(
  assessment: Assessment,
  request: Pick<StudyRequest, 'templates'> & ReportWishes,
  options: TerminalOptions,
): string {
  return renderTerminal(summarise(assessment, request.templates, '', request), options);
}
