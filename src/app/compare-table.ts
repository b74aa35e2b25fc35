import { countText } from '../assess/figures.js';
import { printable } from '../problem/printable.js';
import { fitted } from '../render/terminal/display-width.js';
import type { Comparison } from './compare.js';
import type { CandidateMove } from './compare-effects.js';
import type { Standing } from './compare-standing.js';
import { keyFigures, signed } from './records-figures.js';
import { wrapped } from './wrap.js';

/** Key figures of the table; the others are told as JSON only. */
const columns = [
  { figure: keyFigures.runtime, heading: 'runtime', width: 10 },
  { figure: keyFigures.holding, heading: 'holding', width: 9 },
  { figure: keyFigures.packs, heading: 'packs', width: 6 },
  { figure: keyFigures.mass, heading: 'mass', width: 8 },
  { figure: keyFigures.score, heading: 'score', width: 7 },
  { figure: keyFigures.leads, heading: 'leads', width: 7 },
];
type Column = (typeof columns)[number];

/** What each change does to the figures of one candidate, alone and all together, and where the figures come from. */
export function effectLines(
  comparison: Comparison,
  { id, label }: { id: string; label: string },
  width: number,
): string[] {
  const { decisions, explained } = comparison;
  const { earlier, later, singles, together, company } = explained;
  const shown = columns.filter(({ figure }) =>
    [earlier, later].some((standing) => figure.read(candidateIn(standing, id)) !== null),
  );
  const row = (name: string, cells: string[]) => rowLines(name, cells, shown, width);
  const stated = (standing: Standing) =>
    shown.map(({ figure }) => {
      const value = figure.read(candidateIn(standing, id));
      return value === null ? '–' : figure.show(value);
    });
  const moved = (moves: readonly CandidateMove[]) =>
    shown.map(({ figure }) => {
      const difference = moves.find(({ candidate }) => candidate === id)?.differences[figure.name] ?? null;
      return difference === null ? '–' : signed(difference, figure);
    });
  const rest = moved(company);
  const addsUp = singles.length < 2 || rest.every((cell) => cell === '0');
  return [
    ...row(
      printable(label),
      shown.map(({ heading }) => heading),
    ),
    ...row(decisions.earlier.id, stated(earlier)),
    ...singles.flatMap(({ change, moves }) =>
      row(`  ${printable(`${change.name}: ${change.earlier} → ${change.later}`)}`, moved(moves)),
    ),
    ...(singles.length === 0 ? ['  nothing that could move a figure'] : []),
    ...(addsUp ? [] : row('  only in company', rest)),
    ...row('  all together', moved(together)),
    ...row(decisions.later.id, stated(later)),
    ...(addsUp ? [] : wrapped(companyWords, width)),
    ...basisLines(comparison, width),
  ];
}

const companyWords =
  'What the changes do one at a time does not add up to what they do all together: the rest they do only in company.';

const candidateIn = ({ candidates }: Standing, id: string) => candidates.find((entry) => entry.id === id)!;

/** Where the figures come from: which draws, and where there are none that could be told. */
function basisLines({ decisions, explained, calibrated }: Comparison, width: number): string[] {
  const { earlier, later } = explained;
  const drawn = ({ draws, seed }: Standing) => `${countText(draws)} draws (seed ${seed})`;
  const draws = drawn(earlier) === drawn(later) ? drawn(earlier) : `${drawn(earlier)} and ${drawn(later)}`;
  const after = calibrated ? ', after calibration by measured.csv' : '';
  const unsure = (['earlier', 'later'] as const)
    .filter((which) => !explained[which].bandsGiven)
    .map(
      (which) => `No bands for ${decisions[which].id}, whose readings its draws do not meet: nominal there.`,
    );
  return [
    `Runtime and holding: medians of ${draws}, the same for every line and as in the reports${after}; the others as in the rankings.`,
    ...unsure,
  ].flatMap((line) => wrapped(printable(line), width));
}

/** A long name carries on below; the figures stand beside its last line. */
function rowLines(name: string, cells: string[], shown: readonly Column[], width: number): string[] {
  const nameWidth = width - shown.reduce((sum, column) => sum + column.width, 0);
  const lines = wrapped(name.trimStart(), nameWidth - 1, name.startsWith(' ') ? '  ' : '', '    ');
  const figures = cells.map((cell, index) => fitted(cell, shown[index]!.width, 'right')).join('');
  return lines.map((line, index) =>
    index === lines.length - 1 ? fitted(line, nameWidth) + figures : fitted(line, nameWidth).trimEnd(),
  );
}
