import type { CandidateAssessment } from '../../assess/assessment.js';
import type { OutcomeName } from '../../simulate/ensemble/ensemble.js';
import { bandOf, type ReportContext } from '../context.js';
import type { TableBlock, TableRow } from '../document.js';
import { banded, probabilityNumber } from '../words/bands.js';
import {
  type DisplayReadings,
  fixed,
  isDisplayed,
  number,
  type ReadingName,
  readings,
} from '../words/figures.js';
import { heatReadings } from '../words/survivable.js';
import { cell, figureColumn, groupRow, head, wordColumn } from './cells.js';

interface ShownOutcome {
  outcome: OutcomeName;
  name: string;
  reading: ReadingName | keyof DisplayReadings;
  /** Where the reading's own digits would be too many for a narrow column; takes the SI value. */
  show?: (value: number) => string;
}

const twoDigits = (reading: ReadingName) => (value: number) => {
  const shown = readings[reading].show(value);
  return Math.abs(value) >= 10 ? shown : number(value, 2);
};

/** Outcomes with a spread worth reading, in groups. */
const groups: { title: string; rows: ShownOutcome[] }[] = [
  {
    title: 'On one pack',
    rows: [
      { outcome: 'runtimeS', name: 'Runtime', reading: 'minutes' },
      { outcome: 'warningS', name: 'Warning', reading: 'minutes' },
      { outcome: 'meanPackCurrentA', name: 'Mean current', reading: 'amperes', show: twoDigits('amperes') },
      { outcome: 'peakPackCurrentA', name: 'Peak current', reading: 'amperes', show: twoDigits('amperes') },
    ],
  },
  {
    title: 'Moving and holding',
    rows: [
      { outcome: 'cueFidelityRatio', name: 'Cue fidelity', reading: 'ratio' },
      { outcome: 'holdPowerW', name: 'Power, holding', reading: 'watts', show: twoDigits('watts') },
      {
        outcome: 'torqueMarginRatio',
        name: 'Torque margin',
        reading: 'ratio',
        show: (value) => fixed(value, 1),
      },
      { outcome: 'holdEffortRatio', name: 'Share of stall', reading: 'percent' },
    ],
  },
  {
    title: 'Heat, in the show',
    rows: [
      { outcome: 'windingTemperatureK', name: 'Winding', reading: 'temperature' },
      { outcome: 'caseTemperatureK', name: 'Case', reading: 'temperature' },
    ],
  },
  {
    title: 'Around people',
    rows: [
      { outcome: 'crushForceN', name: 'Squeezes', reading: 'force' },
      { outcome: 'pushForceN', name: 'Yields to a push', reading: 'force' },
      { outcome: 'fallEnergyJ', name: 'Energy of a fall', reading: 'joules', show: twoDigits('joules') },
    ],
  },
];

/** Outcomes that a drive may not survive. */
const heatParts: Partial<Record<OutcomeName, 'winding' | 'case'>> = {
  windingTemperatureK: 'winding',
  caseTemperatureK: 'case',
};

/** Median and 10–90 % of every outcome, a column for each of some candidates; null when nothing is drawn. */
export function spreadTable(context: ReportContext, candidates: CandidateAssessment[]): TableBlock | null {
  const rows = groups.flatMap(({ title, rows: outcomes }): TableRow[] => {
    const drawn = outcomes.filter(({ outcome }) => candidates.some((one) => bandOf(one, outcome) !== null));
    return drawn.length === 0
      ? []
      : [groupRow(title), ...drawn.map((shown) => outcomeRow(context, shown, candidates))];
  });
  if (rows.length === 0) return null;
  return {
    kind: 'table',
    title: '',
    columns: [
      wordColumn('Outcome', 1.25),
      wordColumn('', 0.5),
      ...candidates.map(({ rank, label }) => figureColumn(`${rank} ${label}`, '', 1)),
    ],
    rows,
    note: [],
    rowHeads: true,
    compact: true,
  };
}

function outcomeRow(
  context: ReportContext,
  { outcome, name, reading: wanted, show }: ShownOutcome,
  candidates: CandidateAssessment[],
): TableRow {
  const reading = isDisplayed(wanted) ? context.units[wanted] : readings[wanted];
  return {
    cells: [
      head(name),
      cell(reading.unit, 'muted'),
      ...candidates.map((candidate) => {
        const band = bandOf(candidate, outcome);
        const alive = outcome in heatParts ? heatReadings(context, candidate)[heatParts[outcome]!] : reading;
        const text = banded(band, null, show ?? alive);
        const often =
          band !== null && band.occursFraction < 0.995
            ? `, in ${probabilityNumber(band.occursFraction)}\u00a0%`
            : '';
        return cell(text + often);
      }),
    ],
  };
}
