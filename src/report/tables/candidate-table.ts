import type { CandidateAssessment } from '../../assess/assessment.js';
import { markedLabel, type ReportContext } from '../context.js';
import type { TableBlock, TableCell, TableColumn } from '../document.js';
import { plain } from '../template/inline.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

/** What a table of all candidates has beside their ranks and names. */
export interface CandidateTable {
  /** Width of the names, 1 = an ordinary column. */
  share: number;
  columns: TableColumn[];
  cells(candidate: CandidateAssessment): TableCell[];
  note: string;
  highlighted?(candidate: CandidateAssessment): boolean;
  roomy?: boolean;
}

/** A table with a row for every candidate in rank order, rank and name at its head. */
export function candidateTable(context: ReportContext, table: CandidateTable): TableBlock {
  return {
    kind: 'table',
    title: '',
    columns: [figureColumn('Rank', '', 0.5), wordColumn('Candidate', table.share), ...table.columns],
    rows: context.candidates.map((candidate) => ({
      highlighted: table.highlighted?.(candidate) ?? false,
      cells: [cell(String(candidate.rank)), head(markedLabel(candidate)), ...table.cells(candidate)],
    })),
    note: plain(table.note),
    rowHeads: false,
    compact: !table.roomy,
  };
}
