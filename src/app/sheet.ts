import type { Assessment } from '../assess/assessment.js';
import { type SafetyFigures, safetyFigures } from '../assess/safety/safety-figures.js';
import type { Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { printable } from '../problem/printable.js';
import { type Fact, type ReportDocument, type ReportWishes, templateError } from '../report/index.js';
import { buildSheet } from '../report/pages.js';
import { tipMotion } from '../simulate/tip-motion.js';
import { placed } from './missing-characters.js';
import { assessStudy, type ReportFiles, type ReportSetting, type StudyRequest } from './study.js';
import { wrapped } from './wrap.js';

/** Name of the file that a sheet goes into. */
export const sheetName = 'safety-sheet.pdf';

/** What a sheet is asked for beyond the study itself. */
export interface SheetWish {
  /** Id of the candidate; null for the drive that is built today. */
  candidate: string | null;
  page: ReportSetting['page'];
  /** Date that the sheet carries, from the date that the study gives itself. */
  dateOf(studyDate: string): string;
}

/** A sheet with its figures; or the ids there are, when nobody has the one asked for or nothing is built today. */
export type Sheet =
  | ({ found: true; safety: SafetyFigures; headlines: Fact[] } & ReportFiles)
  | { found: false; known: string[]; nearest: string | null };

/** From files to the safety sheet of one candidate, or to the issues that stand in its way. */
export async function safetySheet(
  request: StudyRequest & ReportWishes,
  wish: SheetWish,
): Promise<Result<Sheet>> {
  const assessed = assessStudy(request, 'ranking');
  if (!assessed.ok) return assessed;
  const { value: assessment, issues } = assessed;
  const { study, baseline } = assessment;
  const wanted = wish.candidate ?? baseline;
  const candidate = assessment.candidates.find(({ id }) => id === wanted);
  const drive = study.candidates.find(({ id }) => id === wanted);
  if (candidate === undefined || drive === undefined) {
    const known = study.candidates.map(({ id }) => id);
    const nearest = wanted === null ? null : nearestName(wanted, known);
    return { ok: true, value: { found: false, known, nearest }, issues };
  }
  const safety = safetyFigures(assessment, candidate, tipMotion(study, drive));
  const setting = { page: wish.page, date: wish.dateOf(study.about.date) };
  const files = await sheetFiles(assessment, safety, request, setting);
  return { ok: true, value: { found: true, safety, ...files }, issues };
}

/**
 * The sheet as a PDF of one page: as many cautions as fit, worst first.
 * @throws TemplateError when the wording alone is longer than a page
 */
export async function sheetFiles(
  assessment: Assessment,
  safety: SafetyFigures,
  request: Pick<StudyRequest, 'files' | 'templates' | 'progress'> & ReportWishes,
  { page, date }: ReportSetting,
): Promise<ReportFiles & { headlines: Fact[] }> {
  const { templates, progress } = request;
  progress('writing the sheet');
  const { loadFonts, renderPdf } = await import('../render/pdf/index.js');
  const fonts = await loadFonts();
  const setWith = async (count: number) => {
    const document = buildSheet(assessment, safety, templates, date, count, request);
    return { ...(await renderPdf(document, { fonts, pageSize: page })), headlines: headlinesOf(document) };
  };
  const most = safety.cautions.length;
  const set = await mostThatFits(most, setWith, ({ pageCount }) => pageCount === 1);
  if (set === null)
    throw templateError('report/sheet.md', 1, 'this is more than one page holds; take some of it out');
  const { bytes, missingCharacters, headlines } = set;
  return {
    files: [{ name: sheetName, bytes }],
    missingCharacters: placed(missingCharacters, request),
    headlines,
  };
}

/** What is made with the largest count from 0 to `most` that fits; null where not even 0 does. Tries `most` first. */
async function mostThatFits<T>(
  most: number,
  make: (count: number) => Promise<T>,
  fits: (made: T) => boolean,
): Promise<T | null> {
  let best: T | null = null;
  let [low, high] = [0, most];
  for (let count = most; low <= high; count = Math.floor((low + high) / 2)) {
    const made = await make(count);
    if (fits(made)) [best, low] = [made, count + 1];
    else high = count - 1;
  }
  return best;
}

function headlinesOf({ sections }: ReportDocument): Fact[] {
  return sections
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.kind === 'facts' && block.style === 'headline' ? block.items : []));
}

/** How many figures an organiser asks for before reading on. */
const askedFirst = 3;

/** Where the sheet is, and the figures at its head, for a terminal. */
export function sheetText(headlines: readonly Fact[], label: string, written: string, width: number): string {
  const lines = headlines
    .slice(0, askedFirst)
    .map(({ label: name, value, note = '' }) => `${name}: ${value}${note === '' ? '' : ` (${note})`}`);
  return [`Safety sheet of ${label}`, ...lines, `Written to ${written}`]
    .flatMap((line) => wrapped(printable(line.replaceAll('\u00a0', ' ')), width, '', '  '))
    .join('\n');
}
