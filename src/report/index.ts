export type { ReportWishes } from './context.js';
export type * from './document.js';
export type { ExportCell, ExportTable } from './export/export-table.js';
export { type Results, toResults } from './results.js';
export { type ReportSummary, type SummaryRow, summarise } from './summary.js';
export { checkTemplates } from './template/check-templates.js';
export { completedPhrases, phrasesFile } from './template/phrases.js';
export {
  TemplateError,
  type TemplateProblem,
  type Templates,
  templateError,
} from './template/template-error.js';
export type { Weighing } from './weighing.js';
export { cleanText, cleanTree } from './words/clean.js';
export { confidenceWords } from './words/confidence.js';
export { restatedAssessment, resultsAlsoIn } from './words/restated.js';
