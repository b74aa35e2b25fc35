export { buildReport } from './build-report.js';
export type * from './document.js';
export { type Results, toResults } from './results.js';
export { type ReportSummary, type SummaryRow, summarise } from './summary.js';
export { TemplateError, type Templates } from './template/template-error.js';
export { type Weighing, weighingOf } from './weighing.js';
export { cleanText, cleanTree } from './words/clean.js';
