// What makes whole pages and tables; loaded when one is asked for, because a ranking needs none of it.
export { buildReport } from './build-report.js';
export { buildSheet } from './build-sheet.js';
export { exportTable } from './export/export-table.js';
export { weighingOf } from './weighing.js';
