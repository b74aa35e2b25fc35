import type { MeasurementAdvice } from '../../assess/assessment.js';
import type { PointOfView } from '../../assess/certainty.js';
import { criterionNames } from '../../assess/criterion-words.js';
import type { CriterionId } from '../../study/choosing.js';
import { withOwner } from '../charts/swings-chart.js';
import { labelOf, markedLabel, type ReportContext } from '../context.js';
import type { Block, TableRow } from '../document.js';
import { probability, probabilityNumber } from '../words/bands.js';
import { capitalised, fixed, none } from '../words/figures.js';
import { cell, figureColumn, head, wordColumn } from './cells.js';

/** More rows than these tell little. */
const mostFlips = 8;
const mostMeasurements = 5;

/** Less than this reads as nothing with three digits. */
const leastWorth = 0.0005;

/** Values of inputs at which somebody else leads; nothing when no input's range holds one. */
export function flipTable(context: ReportContext): Block[] {
  const flips = context.assessment.certainty?.sensitivity?.flips ?? [];
  if (flips.length === 0) return [];
  const rows = flips.slice(0, mostFlips).map(
    (flip): TableRow => ({
      cells: [
        head(capitalised(withOwner(context, flip.label, flip.owner))),
        cell(flip.nominalShown),
        cell(flip.shown),
        cell(labelOf(context, flip.leaderBeyond)),
        cell(probability(flip.beyondProbability)),
      ],
    }),
  );
  return [
    {
      kind: 'table',
      title: '',
      columns: [
        wordColumn('Input', 2.6),
        figureColumn('Taken as', '', 1.1),
        figureColumn('Turns at', '', 1.1),
        wordColumn('Then leads', 2),
        figureColumn('Lies beyond in', '', 0.9),
      ],
      rows,
      note: [],
      rowHeads: true,
      compact: true,
    },
  ];
}

/** What to measure, the most useful first: how, with what, how long, how well, and where it goes. */
export function measureTable(context: ReportContext, advice: MeasurementAdvice[]): Block[] {
  if (advice.length === 0) return [];
  const shown = advice.slice(0, mostMeasurements);
  const hasDraws = shown.some(({ worthScore }) => worthScore !== undefined);
  const rows = shown.map(
    (one): TableRow => ({
      cells: [
        head(capitalised(withOwner(context, one.label, one.candidate))),
        ...(hasDraws ? [cell(choiceText(one))] : []),
        cell(capitalised(one.method)),
        cell(capitalised(one.instrument)),
        cell(fixed(one.minutes, 0)),
        cell(one.precision ?? none),
        cell(one.goesInto ?? none),
      ],
    }),
  );
  const columns = [
    wordColumn('What', 2.2),
    ...(hasDraws ? [figureColumn('Alone, changes the choice in', '% of draws', 1.2)] : []),
    wordColumn('How', 3),
    wordColumn('With', 1.3),
    figureColumn('Takes', 'min', 0.6),
    figureColumn('Needed accuracy', '', 0.85),
    wordColumn('Write it into', 1.4),
  ];
  return [{ kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true }];
}

function choiceText({ worthScore = 0, changedProbability = 0 }: MeasurementAdvice): string {
  return worthScore < leastWorth ? '0' : probabilityNumber(changedProbability);
}

/** Who leads in how many draws when somebody else sets the weights; the user's own weights come first. */
export function viewsTable(context: ReportContext): Block[] {
  const { certainty } = context.assessment;
  if (!certainty || certainty.pointsOfView.length === 0) return [];
  const views = certainty.pointsOfView;
  const share = (view: PointOfView, id: string) =>
    view.leadProbabilities.find(({ candidate }) => candidate === id)?.probability ?? null;
  const best = views.map((view) => Math.max(...view.leadProbabilities.map(({ probability: p }) => p)));
  const rows = context.candidates.map((candidate): TableRow => {
    const shares = views.map((view) => share(view, candidate.id));
    return {
      cells: [
        head(markedLabel(candidate)),
        cell(probabilityNumber(certainty.candidates[candidate.id]?.leadProbability)),
        ...shares.map((value, index) =>
          value !== null && value === best[index]
            ? head(probabilityNumber(value))
            : cell(probabilityNumber(value), 'muted'),
        ),
      ],
    };
  });
  return [
    {
      kind: 'table',
      title: '',
      columns: [
        wordColumn('Candidate', 2.6),
        figureColumn('Your own weights', '%', 1),
        ...views.map((view) => figureColumn(capitalised(view.label), '%', 1)),
      ],
      rows,
      note: [{ text: context.phrases('views-note') }],
      rowHeads: true,
      compact: true,
    },
  ];
}

/** Weights of a study or a change of them, the weightiest first: `runtime 38 %, mass on the body 20 %`. */
export function weightWords(weights: Partial<Record<CriterionId, number>>): string {
  const entries = Object.entries(weights) as [CriterionId, number][];
  const sum = entries.reduce((total, [, weight]) => total + weight, 0);
  if (!(sum > 0)) return none;
  return entries
    .filter(([, weight]) => weight / sum >= 0.005)
    .sort(([, a], [, b]) => b - a)
    .map(([id, weight]) => `${criterionNames[id]} ${probability(weight / sum)}`)
    .join(', ');
}
