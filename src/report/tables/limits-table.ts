import type { CandidateAssessment, LimitOutcome } from '../../assess/assessment.js';
import { passesOnPaper } from '../../assess/certainty/findings.js';
import { limitName } from '../../assess/criterion-words.js';
import { certaintyOf, type ReportContext } from '../context.js';
import type { TableBlock, TableRow } from '../document.js';
import { probability } from '../words/bands.js';
import { criterionFigure, limitDemand } from '../words/criterion-words.js';
import { capitalised, fixed, joined, none } from '../words/figures.js';
import { fieldWords } from '../words/outcome-words.js';
import { cell, figureColumn, head, onPaperCell, row, wordColumn } from './cells.js';

/** Every limit against one candidate, with how far inside or outside it stands. */
export function limitsTable(context: ReportContext, candidate: CandidateAssessment): TableBlock {
  const probabilities = certaintyOf(context, candidate)?.limitProbabilities ?? null;
  const columns = [
    wordColumn('Limit', 1.75),
    figureColumn('Must be', '', 0.95),
    figureColumn('Is', '', 0.95),
    figureColumn('Margin', '', 0.85),
    wordColumn(probabilities === null ? 'Verdict' : 'Verdict, and holds in', 2.6),
  ];
  const rows = candidate.limits.map((limit, index) =>
    limitRow(context, limit, probabilities === null ? undefined : (probabilities[index] ?? null)),
  );
  const asksFidelity = candidate.limits.some(({ criterion }) => criterion === 'cue_fidelity');
  const note = asksFidelity ? [{ text: context.phrases('cue-fidelity') }] : [];
  return { kind: 'table', title: '', columns, rows, note, rowHeads: true, compact: true };
}

/** @param share of draws in which it holds; undefined without draws, null where it is not judged */
function limitRow(context: ReportContext, limit: LimitOutcome, share: number | null | undefined): TableRow {
  return row(
    head(capitalised(limitName(limit.criterion))),
    cell(limitDemand(limit, context)),
    cell(criterionFigure(limit.criterion, limit.value, context)),
    cell(margin(limit)),
    verdict(limit, share),
  );
}

function margin(limit: LimitOutcome): string {
  if (limit.margin === null || limit.reason !== undefined) return none;
  const sign = limit.margin >= 0 ? '+' : '−';
  return `${sign}${fixed(Math.abs(limit.margin) * 100, 0)}${joined}%`;
}

function verdict(limit: LimitOutcome, share: number | null | undefined) {
  if (limit.passes === null) {
    return cell(
      `not judged: ${limit.missing ? `${fieldWords(limit.missing)} is missing` : 'a figure is missing'}`,
      'muted',
    );
  }
  if (passesOnPaper(limit.passes, share ?? null)) {
    return onPaperCell('passes on paper', `${probability(share)} of draws`);
  }
  const drawn = typeof share === 'number' ? `, ${probability(share)} of draws` : '';
  const reason = (limit.reason === undefined ? '' : `: ${limit.reason}`) + drawn;
  return limit.passes ? cell(`✓ passes${reason}`, 'good') : cell(`✗ fails${reason}`, 'bad');
}
