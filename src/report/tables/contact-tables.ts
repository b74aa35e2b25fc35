import type { CandidateAssessment } from '../../assess/assessment.js';
import { decidingPowerCut, type PowerCutOutcome } from '../../simulate/outcome.js';
import { bandOf, markedLabel, type ReportContext } from '../context.js';
import type { TableBlock, TableCell, TableRow } from '../document.js';
import { plain } from '../template/inline.js';
import { banded, probabilityNumber } from '../words/bands.js';
import { none, number, readings } from '../words/figures.js';
import { lockingWords } from '../words/outcome-words.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

/** Every candidate when the power goes at the highest hold: leads open, leads shorted, and which of them decides. */
export function powerCutsTable(context: ReportContext): TableBlock {
  const hasDraws = context.assessment.certainty !== null;
  return {
    kind: 'table',
    title: '',
    columns: [
      figureColumn('Rank', '', 0.5),
      wordColumn('Candidate', 2.4),
      wordColumn('Unpowered it', 1.7),
      figureColumn('Open leads', 's', 0.9),
      figureColumn('tip', 'm/s', 0.7),
      figureColumn('energy', 'J', 0.9),
      figureColumn('Shorted', 's', 0.9),
      figureColumn('tip', 'm/s', 0.7),
      figureColumn('energy', 'J', 0.9),
      wordColumn('Decides', 0.9),
      ...(hasDraws ? [figureColumn('Falls in', '% of draws', 1)] : []),
    ],
    rows: context.candidates.map((candidate) => powerCutRow(candidate, hasDraws)),
    note: plain(context.phrases('power-cut-note')),
    rowHeads: false,
    compact: true,
  };
}

function powerCutRow(candidate: CandidateAssessment, hasDraws: boolean): TableRow {
  const { powerCut, locking } = candidate.nominal;
  const opened = powerCut.decides === 'open';
  return {
    cells: [
      cell(String(candidate.rank)),
      head(markedLabel(candidate)),
      cell(lockingWords[locking], locking === 'does-not-hold' ? 'bad' : undefined),
      ...fallCells(powerCut),
      ...fallCells(powerCut.shorted),
      cell(opened ? 'open' : 'shorted'),
      ...(hasDraws ? [cell(probabilityNumber(bandOf(candidate, 'fallS')?.occursFraction ?? 0))] : []),
    ],
  };
}

function fallCells(state: PowerCutOutcome): TableCell[] {
  if (state.stays && state.impactEnergyJ === null) return [{ ...cell('stays', 'good'), span: 3 }];
  if (state.fallS === null && state.impactEnergyJ === null) return [{ ...cell('sinks, no fall'), span: 3 }];
  return [
    cell(number(state.fallS, 2)),
    cell(readings.metresPerSecond.show(state.tipSpeedMPerS)),
    cell(number(state.impactEnergyJ, 2)),
  ];
}

/** Push at the tip both ways, with and without power, and how hard each can squeeze. */
export function contactTable(context: ReportContext): TableBlock {
  const isHinge = context.assessment.study.feature.kind === 'hinge';
  const push = (value: number | null): TableCell =>
    value === null ? cell('locks', 'muted') : cell(readings.newtons.show(value));
  return {
    kind: 'table',
    title: '',
    columns: [
      figureColumn('Rank', '', 0.5),
      wordColumn('Candidate', 2.6),
      figureColumn('Down, powered', 'N', 1),
      figureColumn('Up, powered', 'N', 1),
      figureColumn('Down, off', 'N', 1),
      figureColumn('Up, off', 'N', 1),
      figureColumn(isHinge ? 'Squeezes near the hinge' : 'Squeezes', 'N', 1.5),
      ...(isHinge ? [figureColumn('at the tip', 'N', 0.9)] : []),
    ],
    rows: context.candidates.map((candidate): TableRow => {
      const { nominal } = candidate;
      return {
        cells: [
          cell(String(candidate.rank)),
          head(markedLabel(candidate)),
          push(nominal.pushDownN),
          push(nominal.pushUpN),
          push(nominal.unpoweredPushDownN),
          push(nominal.unpoweredPushUpN),
          cell(banded(bandOf(candidate, 'crushForceN'), nominal.crushForceN, 'newtons')),
          ...(isHinge ? [cell(readings.newtons.show(nominal.crushForceAtTipN))] : []),
        ],
      };
    }),
    note: plain(context.phrases('contact-note')),
    rowHeads: false,
    compact: true,
  };
}

/** Fall of one candidate in a few words: `falls in 0.77 s, 4.0 m/s, 1.27 J` or `stays`. */
export function fallWords({ nominal }: CandidateAssessment): string {
  const { stays, fallS, tipSpeedMPerS, impactEnergyJ } = decidingPowerCut(nominal);
  if (stays) return 'stays up';
  const figures = [
    readings.seconds.show(fallS),
    readings.metresPerSecond.show(tipSpeedMPerS),
    readings.joules.show(impactEnergyJ),
  ];
  if (figures.includes(none)) return 'sinks';
  return `falls in ${figures[0]}\u00a0s and lands with ${figures[1]}\u00a0m/s and ${figures[2]}\u00a0J`;
}
