import { bytesOf, sha256Of } from '../archive/digest.js';
import type { Assessment } from '../assess/assessment.js';
import { beginDraws } from '../assess/certainty/draws.js';
import { conclude } from '../assess/conclude.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import { howToMeasure } from '../input/how-to-measure.js';
import { readAssumptions } from '../input/read-assumptions.js';
import { readPointsOfView } from '../input/read-points-of-view.js';
import { readStudy } from '../input/read-study.js';
import type { Issue, Result } from '../problem/issue.js';
import type { DecimalMark } from '../render/csv/render-csv.js';
import { formats } from '../render/index.js';
import { renderJson } from '../render/json/render-json.js';
import { renderTerminal, type TerminalOptions } from '../render/terminal/render-terminal.js';
import { type ReportWishes, summarise, toResults } from '../report/index.js';
import { nominalRun, simulateCandidate } from '../simulate/candidate.js';
import { carriedFiles } from './carried-files.js';
import { inputHash, inputsAsRead } from './input-hash.js';
import { type MissingCharacter, placed } from './missing-characters.js';
import { carriedNames } from './rerun-settings.js';
import type { ReportSetting, StudyRequest } from './study-request.js';

export type { ReportFormat, ReportSetting, StudyRequest } from './study-request.js';

/** What `reportFiles` makes. */
export interface ReportFiles {
  files: InputFile[];
  /** Signs that no font has. */
  missingCharacters: MissingCharacter[];
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
  const { progress, templates, files, changes, version, threads } = request;
  progress('reading the study');
  const assumptions = readAssumptions(templates);
  const read = readStudy(files, assumptions, changes);
  if (!read.ok) return read;
  const study = read.value;
  const { views, issues: viewIssues } = readPointsOfView(templates, study, assumptions);
  const issues = [...read.issues, ...viewIssues];
  if (viewIssues.some(({ severity }) => severity === 'error')) return { ok: false, issues };

  // 2 Simulate: draws of what is not exactly known, begun elsewhere if anybody else is there; and meanwhile what
  // each candidate does with the figures as they stand, or as the readings leave them, before anybody judges it.
  progress('computing the candidates');
  const { believed, finish } = beginDraws(study, threads);
  const runs = study.candidates.map((candidate) => nominalRun(study, believed, candidate));

  // 3 Judge: limits, scores, what the draws say of them, lesser changes, the day, and the verdict.
  const inputs = inputsAsRead(files);
  const hash = inputHash(inputs, templates[assumptionsFile] ?? '', changes);
  const assessment = conclude(
    believed,
    runs,
    finish,
    { version, inputHash: hash, inputs },
    {
      simulate: (changed, candidate) => simulateCandidate(changed, candidate, 'sketch'),
      howToMeasure,
      views,
      depth,
      progress,
      ...(threads && { threads }),
      ...(request.keepChoice && { keepChoice: request.keepChoice }),
    },
  );
  return {
    ok: true,
    // The figures as read, with what the judgement left out of the score for want of a cell.
    value: {
      ...assessment,
      study: { ...study, criteria: assessment.study.criteria },
      believed: believed === study ? null : believed,
    },
    issues,
  };
}

/** The assessment as the files of a report: `results.json`, and the pages in the wanted formats. */
export async function reportFiles(
  assessment: Assessment,
  request: StudyRequest & ReportWishes,
  setting: ReportSetting,
): Promise<ReportFiles> {
  // 4 Tell: headings, tables, charts and cautions as data, in the wording of the templates. The PDF carries all that
  // it was made from.
  request.progress('writing the report');
  const { buildReport, weighingOf } = await import('../report/pages.js');
  const { templates } = request;
  const { page, date, choice, formats: wanted = ['pdf'] } = setting;
  const results = { name: carriedNames.results, bytes: bytesOf(resultsText(assessment)) };
  const document = buildReport(assessment, templates, date, request);
  document.keywords.push(`results ${sha256Of(results.bytes)}`);
  const report = {
    document,
    summary: () => summarise(assessment, templates, date, request),
    results: toResults(assessment),
    attachments: carriedFiles({ ...request, setting, results }),
    ...(choice && { weighing: weighingOf(assessment, choice, templates, date, request) }),
  };

  // 5 Render: bytes. Fonts and charts are loaded only here.
  request.progress('drawing pages and charts');
  const made: ReportFiles = { files: [], missingCharacters: [] };
  for (const name of wanted) {
    const { fileName, render } = formats[name];
    const { bytes, missingCharacters } = await render(report, { pageSize: page, width: 80, colour: false });
    made.files.push({ name: fileName!, bytes });
    made.missingCharacters.push(...placed(missingCharacters, request));
  }
  made.files.push(results);
  return made;
}

/**
 * Puts every sentence of the report together and throws it away: for who edits the wording.
 *
 * @throws TemplateError with everything that the templates ask for and nobody knows
 */
export async function checkWording(
  assessment: Assessment,
  request: Pick<StudyRequest, 'templates'> & ReportWishes,
): Promise<void> {
  const { buildReport } = await import('../report/pages.js');
  buildReport(assessment, request.templates, '', request);
}

/**
 * The results as JSON text, the contract of whoever reads them with a program.
 * @param issues warnings met on the way, where they are to stand beside the results
 */
export function resultsText(assessment: Assessment, issues?: readonly Issue[]): string {
  return renderJson({ ...toResults(assessment), ...(issues && { issues }) });
}

/** The ranking with every outcome, for a spreadsheet; see `renderCsv`. */
export async function rankingCsv(assessment: Assessment, decimal?: DecimalMark): Promise<string> {
  const { exportTable } = await import('../report/pages.js');
  const { renderCsv } = await import('../render/csv/render-csv.js');
  return renderCsv(exportTable(toResults(assessment)), decimal);
}

/** The ranking in few lines, for a terminal. */
export function rankingText(
  assessment: Assessment,
  request: Pick<StudyRequest, 'templates'> & ReportWishes,
  options: TerminalOptions,
): string {
  return renderTerminal(summarise(assessment, request.templates, '', request), options);
}
