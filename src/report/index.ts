export { buildReport } from './build-report.js';
export { buildSheet } from './build-sheet.js';
export type * from './document.js';
export { type ExportCell, type ExportTable, exportTable } from './export/export-table.js';
export { type Results, toResults } from './results.js';
export { type ReportSummary, type SummaryRow, summarise } from './summary.js';
export { TemplateError, type Templates } from './template/template-error.js';
export { type Weighing, weighingOf } from './weighing.js';
export { cleanText, cleanTree } from './words/clean.js';
