import type { Assessment } from '../assess/assessment.js';
import type { SafetyFigures } from '../assess/safety/safety-figures.js';
import { buildSection, footer } from './build-report.js';
import { type ReportWishes, reportContext } from './context.js';
import type { ReportDocument } from './document.js';
import { longestSigns, sheetFilling, shortened } from './sections/sheet.js';
import type { Templates } from './template/template-error.js';
import { cleanTree } from './words/clean.js';

/**
 * The safety sheet of one candidate as a document of one section, worded in `report/sheet.md`.
 *
 * @param templates texts of all templates by their path below `templates/`
 * @param date ISO date to print when the study names none
 * @param cautionCount how many cautions it shows, worst first; the page has room for so many
 * @throws TemplateError with file and line for a template that asks for something nobody knows
 */
export function buildSheet(
  assessment: Assessment,
  safety: SafetyFigures,
  templates: Templates,
  date: string,
  cautionCount: number,
  wishes: ReportWishes = {},
): ReportDocument {
  const context = reportContext(assessment, templates, date, wishes);
  const { about } = context.assessment.study;
  const project = shortened(about.project, longestSigns.project);
  // Cautions are sentences, which the context has in the units that were asked for.
  const cautions = safety.cautions.map(
    (caution) => context.assessment.cautions[assessment.cautions.indexOf(caution)] ?? caution,
  );
  const clean = cleanTree({ ...safety, cautions });
  const section = buildSection(context, 'sheet', sheetFilling(context, clean, cautionCount));
  const title = context.phrases('sheet-title', { project });
  return {
    title,
    subtitle: project,
    author: about.preparedBy,
    subject: clean.label,
    keywords: ['safety sheet', `inputs ${assessment.inputHash}`],
    language: 'en',
    date: context.date,
    footer: footer(context),
    pageNumber: context.phrases('page-number'),
    appendixTitle: context.phrases('appendix'),
    sections: [section],
  };
}
