import type { CandidateAssessment } from '../../assess/assessment.js';
import { weakestLimits } from '../../assess/certainty/findings.js';
import { countText } from '../../assess/figures.js';
import { driveTypes } from '../../drives/registry.js';
import { bandOf, certaintyOf, markedLabel, planOf, type ReportContext, runtimeBandOf } from '../context.js';
import type { TableBlock, TableCell, TableColumn, TableRow } from '../document.js';
import { banded, probability, probabilityNumber } from '../words/bands.js';
import { joined, none, readings } from '../words/figures.js';
import { leftOutWords } from '../words/left-out.js';
import { limitsSummary } from '../words/outcome-words.js';
import { cell, figureColumn, head, onPaperCell, wordColumn } from './cells.js';
import { packsText } from './day-tables.js';

/** A column of the ranking and what stands in it. */
interface RankingColumn {
  column: TableColumn;
  cell(candidate: CandidateAssessment): TableCell;
}

/** The ranking: who stands where, what each gives and what it takes, and how often it leads. */
export function rankingTable(context: ReportContext): TableBlock {
  const { candidates, assessment, phrases } = context;
  const columns = rankingColumns(context);
  const note = assessment.certainty
    ? phrases('ranking-note-draws', { draws: countText(assessment.certainty.draws) })
    : phrases('ranking-note');
  return {
    kind: 'table',
    title: '',
    columns: columns.map(({ column }) => column),
    rows: candidates.map(
      (candidate): TableRow => ({
        highlighted: candidate === context.leader,
        cells: columns.map((one) => one.cell(candidate)),
      }),
    ),
    note: [
      {
        text: [note, ...(assessment.day ? [phrases('ranking-note-day')] : []), leftOutWords(context)]
          .join(' ')
          .trimEnd(),
      },
    ],
    rowHeads: true,
    compact: candidates.length > roomyRows,
  };
}

/** More rows than these are set tighter, so that the first page keeps its chart. */
export const roomyRows = 6;

function rankingColumns(context: ReportContext): RankingColumn[] {
  const { assessment, currency } = context;
  const column = (of: TableColumn, text: (candidate: CandidateAssessment) => string): RankingColumn => ({
    column: of,
    cell: (candidate) => cell(text(candidate)),
  });
  const body = assessment.study.carrier.worn ? 'On\u00a0body' : 'Mass';
  return [
    column(figureColumn('Rank', '', 0.5), ({ rank }) => String(rank)),
    { column: wordColumn('Candidate', 2.4), cell: (candidate) => head(markedLabel(candidate)) },
    column(wordColumn('Type', 1.4), ({ type }) => driveTypes[type].label),
    { column: wordColumn('Limits', 2.35), cell: (candidate) => limitsCell(context, candidate) },
    column(figureColumn('Runtime', 'min', 1), (candidate) =>
      banded(runtimeBandOf(candidate), candidate.nominal.runtimeS, 'minutes'),
    ),
    ...(assessment.day === null
      ? []
      : [column(figureColumn('Packs', 'a day', 0.75), (candidate) => packsForTheDay(context, candidate))]),
    column(figureColumn(body, context.units.mass.unit, 0.9), ({ nominal }) =>
      context.units.mass.show(nominal.bodyMassKg),
    ),
    column(figureColumn('Holding', 'W', 0.9), (candidate) =>
      banded(bandOf(candidate, 'holdPowerW'), candidate.nominal.holdPowerW, holdingText),
    ),
    column(figureColumn('Cost', currency, 0.75), ({ nominal }) => readings.money.show(nominal.cost)),
    column(figureColumn('Work', 'h', 0.7), ({ nominal }) => readings.hours.show(nominal.reworkTimeS)),
    column(figureColumn('Score', '', 0.75), ({ score }) => readings.ratio.show(score)),
    ...(assessment.certainty === null
      ? []
      : [
          column(figureColumn('Leads', '%', 0.7), (candidate) =>
            probabilityNumber(certaintyOf(context, candidate)?.leadProbability),
          ),
        ]),
  ];
}

/** Three digits that count; nothing stays nothing. */
function holdingText(power: number): string {
  return power < 0.005 ? '0' : readings.wattsInColumn.show(power);
}

/** Packs that the day takes; a day that no number of packs does has a dash. */
export function packsForTheDay(context: ReportContext, candidate: CandidateAssessment): string {
  const plan = planOf(context, candidate);
  return plan ? packsText(plan) : none;
}

function limitsCell(context: ReportContext, candidate: CandidateAssessment): TableCell {
  const limits = limitsSummary(candidate);
  const certainty = certaintyOf(context, candidate);
  if (!certainty?.passesOnPaper) return cell(limits.text, limits.tone);
  const share = probability(certainty.passProbability);
  const [weakest] = weakestLimits(candidate.limits, certainty.limitProbabilities);
  const which = weakest === undefined ? '' : ` (${weakest.name.replaceAll(' ', joined)})`;
  return onPaperCell('passes on paper', `${share} of draws${which}`);
}
