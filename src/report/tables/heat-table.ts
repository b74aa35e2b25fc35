import type { CandidateAssessment } from '../../assess/assessment.js';
import { bandOf, markedLabel, type ReportContext } from '../context.js';
import type { TableBlock, TableCell, TableRow } from '../document.js';
import { plain } from '../template/inline.js';
import { banded } from '../words/bands.js';
import { none, readings, withReading } from '../words/figures.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

/** Winding and case of every candidate in the show and held for ever, against their limits; the share of on-time. */
export function heatTable(context: ReportContext): TableBlock {
  const hasShare = context.candidates.some(({ nominal }) => nominal.onShareFraction !== null);
  return {
    kind: 'table',
    title: '',
    columns: [
      figureColumn('Rank', '', 0.5),
      wordColumn('Candidate', 2.4),
      figureColumn('Winding, in the show', '°C', 1.3),
      figureColumn('Case, in the show', '°C', 1.2),
      figureColumn('Winding, held for ever', '°C', 1.3),
      figureColumn('Case, held for ever', '°C', 1.1),
      figureColumn('Winding limit', '°C', 0.9),
      wordColumn('Held, the limit comes', 1.5),
      ...(hasShare ? [figureColumn('On-time, allowed', '%', 1.2)] : []),
    ],
    rows: context.candidates.map((candidate) => heatRow(context, candidate, hasShare)),
    note: plain(context.phrases(hasShare ? 'heat-note-share' : 'heat-note')),
    rowHeads: false,
  };
}

function heatRow(context: ReportContext, candidate: CandidateAssessment, hasShare: boolean): TableRow {
  const { nominal } = candidate;
  const sheet = context.assessment.study.candidates.find((one) => one.id === candidate.id)?.sheet;
  const settled = (value: number | null): TableCell =>
    value === null && nominal.thermalRunaway ? cell('never settles', 'bad') : celsius(value);
  return {
    cells: [
      cell(String(candidate.rank)),
      head(markedLabel(candidate)),
      cell(banded(bandOf(candidate, 'windingTemperatureK'), nominal.windingTemperatureK, 'celsius')),
      cell(banded(bandOf(candidate, 'caseTemperatureK'), nominal.caseTemperatureK, 'celsius')),
      settled(nominal.settledHoldWindingK),
      settled(nominal.settledHoldCaseK),
      celsius(sheet?.windingLimitK ?? null),
      cell(limitWords(candidate), nominal.timeToLimitHoldingS === null ? undefined : 'bad'),
      ...(hasShare ? [cell(shareWords(nominal.onShareFraction, sheet?.onShareFraction ?? null))] : []),
    ],
  };
}

function celsius(value: number | null): TableCell {
  return cell(readings.celsius.show(value));
}

function limitWords({ nominal }: CandidateAssessment): string {
  if (nominal.windingTemperatureK === null && nominal.settledHoldWindingK === null) return none;
  return nominal.timeToLimitHoldingS === null
    ? 'never'
    : `after ${withReading(nominal.timeToLimitHoldingS, 'minutes')}`;
}

function shareWords(worst: number | null, allowed: number | null): string {
  if (worst === null) return none;
  const share = readings.percent.show(worst);
  return allowed === null ? share : `${share} of ${readings.percent.show(allowed)}`;
}
