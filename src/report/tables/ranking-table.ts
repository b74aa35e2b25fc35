import type { CandidateAssessment } from '../../assess/assessment.js';
import { driveTypes } from '../../drives/registry.js';
import { markedLabel, type ReportContext } from '../context.js';
import type { TableBlock, TableRow } from '../document.js';
import { readings } from '../words/figures.js';
import { limitsSummary } from '../words/outcome-words.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

/** The ranking: who stands where, what each gives and what it takes. */
export function rankingTable(context: ReportContext): TableBlock {
  const { assessment, candidates, currency, phrases } = context;
  return {
    kind: 'table',
    title: '',
    columns: [
      figureColumn('Rank', '', 0.55),
      wordColumn('Candidate', 2.9),
      wordColumn('Type', 1.75),
      wordColumn('Limits', 2.55),
      figureColumn('Runtime', 'min', 1),
      figureColumn(assessment.study.carrier.worn ? 'On body' : 'Mass', 'g', 1),
      figureColumn('Holding', 'W', 1),
      figureColumn('Cost', currency, 0.8),
      figureColumn('Work', 'h', 0.75),
      figureColumn('Score', '', 0.8),
    ],
    rows: candidates.map((candidate) => rankingRow(candidate, candidate === context.leader)),
    note: [{ text: phrases('ranking-note') }],
    rowHeads: true,
  };
}

function rankingRow(candidate: CandidateAssessment, highlighted: boolean): TableRow {
  const { nominal } = candidate;
  const limits = limitsSummary(candidate);
  return {
    highlighted,
    cells: [
      cell(String(candidate.rank)),
      head(markedLabel(candidate)),
      cell(driveTypes[candidate.type].label),
      cell(limits.text, limits.tone),
      cell(readings.minutes.show(nominal.runtimeS)),
      cell(readings.grams.show(nominal.bodyMassKg)),
      cell(readings.wattsInColumn.show(nominal.holdPowerW)),
      cell(readings.money.show(nominal.cost)),
      cell(readings.hours.show(nominal.reworkTimeS)),
      cell(readings.ratio.show(candidate.score)),
    ],
  };
}
