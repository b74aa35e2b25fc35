import type { CandidateAssessment } from '../../assess/assessment.js';
import { goesTo } from '../../assess/unpowered-words.js';
import { decidingPowerCut, type PowerCutOutcome } from '../../simulate/outcome.js';
import { bandOf, type ReportContext } from '../context.js';
import type { TableBlock, TableCell } from '../document.js';
import { banded, probabilityNumber } from '../words/bands.js';
import { duration, none, number, withReading } from '../words/figures.js';
import { lockingWords } from '../words/outcome-words.js';
import { candidateTable } from './candidate-table.js';
import { cell, figureColumn, wordColumn } from './cells.js';

/** Every candidate when the power goes at the hold it leaves hardest: leads open, leads shorted, and which of them decides. */
export function powerCutsTable(context: ReportContext): TableBlock {
  const hasDraws = context.assessment.certainty !== null;
  const { unit } = context.units.speed;
  const moving = context.assessment.study.feature.kind === 'hinge' ? 'tip' : 'speed';
  return candidateTable(context, {
    share: 2.4,
    columns: [
      wordColumn('Its gears', 1.7),
      figureColumn('Open leads', 's', 0.9),
      figureColumn(moving, unit, 0.7),
      figureColumn('energy', 'J', 0.9),
      figureColumn('Shorted', 's', 0.9),
      figureColumn(moving, unit, 0.7),
      figureColumn('energy', 'J', 0.9),
      wordColumn('Decides', 0.9),
      ...(hasDraws ? [figureColumn('Falls in', '% of draws', 1)] : []),
    ],
    cells: (candidate) => powerCutCells(context, candidate, hasDraws),
    note: [
      context.phrases('power-cut-note'),
      ...(anyUpwards(context) ? [context.phrases('power-cut-upwards')] : []),
    ].join(' '),
  });
}

/** Whether any candidate lands on the upper stop. */
const anyUpwards = ({ candidates }: ReportContext): boolean =>
  candidates.some(({ nominal: { powerCut } }) =>
    [powerCut, powerCut.shorted].some(({ fallS, towards }) => fallS !== null && towards === 'upper'),
  );

function powerCutCells(
  context: ReportContext,
  candidate: CandidateAssessment,
  hasDraws: boolean,
): TableCell[] {
  const { powerCut, locking } = candidate.nominal;
  return [
    cell(lockingWords[locking], locking === 'does-not-hold' ? 'bad' : undefined),
    ...fallCells(context, powerCut),
    ...fallCells(context, powerCut.shorted),
    cell(powerCut.decides === 'open' ? 'open' : 'shorted'),
    ...(hasDraws ? [cell(probabilityNumber(bandOf(candidate, 'fallS')?.occursFraction ?? 0))] : []),
  ];
}

function fallCells({ units }: ReportContext, state: PowerCutOutcome): TableCell[] {
  if (state.stays) return [{ ...cell('stays', 'good'), span: 3 }];
  if (state.fallS === null) return [{ ...cell('sinks, no fall'), span: 3 }];
  return [
    cell(`${number(state.fallS, 2)}${state.towards === 'upper' ? ' up' : ''}`),
    cell(units.speed.show(state.tipSpeedMPerS)),
    cell(number(state.impactEnergyJ, 2)),
  ];
}

/** Push at the tip both ways, with and without power, and how hard each can squeeze. */
export function contactTable(context: ReportContext): TableBlock {
  const isHinge = context.assessment.study.feature.kind === 'hinge';
  const { force } = context.units;
  const push = (value: number | null): TableCell =>
    value === null ? cell('locks', 'muted') : cell(force.show(value));
  return candidateTable(context, {
    share: 2.6,
    columns: [
      figureColumn('Down, powered', force.unit, 1),
      figureColumn('Up, powered', force.unit, 1),
      figureColumn('Down, off', force.unit, 1),
      figureColumn('Up, off', force.unit, 1),
      figureColumn(isHinge ? 'Squeezes near the hinge' : 'Squeezes', force.unit, 1.5),
      ...(isHinge ? [figureColumn('at the tip', force.unit, 0.9)] : []),
    ],
    cells: (candidate) => {
      const { nominal } = candidate;
      return [
        push(nominal.pushDownN),
        push(nominal.pushUpN),
        push(nominal.unpoweredPushDownN),
        push(nominal.unpoweredPushUpN),
        cell(banded(bandOf(candidate, 'crushForceN'), nominal.crushForceN, force)),
        ...(isHinge ? [cell(force.show(nominal.crushForceAtTipN))] : []),
      ];
    },
    note: context.phrases('contact-note', { where: isHinge ? context.phrases('at-tip') : '' }),
  });
}

/** Fall of one candidate in a few words: `falls in 0.77 s and lands at 4 m/s with 1.27 J` or `stays`. */
export function fallWords({ units, assessment }: ReportContext, { nominal }: CandidateAssessment): string {
  const { stays, fallS, tipSpeedMPerS, impactEnergyJ, towards } = decidingPowerCut(nominal);
  if (stays) return 'stays up';
  const speed = withReading(tipSpeedMPerS, units.speed);
  const [fall, energy] = [duration(fallS), withReading(impactEnergyJ, 'joules')];
  if ([fall, speed, energy].includes(none)) return 'sinks';
  return `${goesTo(towards, assessment.study.feature.kind)} in ${fall} and lands at ${speed} with ${energy}`;
}
