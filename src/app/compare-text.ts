import type { DecisionRecord } from '../archive/record.js';
import { printable, quoted } from '../problem/printable.js';
import { fitted } from '../render/terminal/display-width.js';
import type { Comparison } from './compare.js';
import type { CandidateMove, Standing } from './compare-effects.js';
import { differs, keyFigures, signed } from './records-figures.js';
import { wrapped } from './wrap.js';

/** Key figures of the table; the others are told as JSON only. */
const columns = [
  { figure: keyFigures[0]!, heading: 'runtime', width: 10 },
  { figure: keyFigures[1]!, heading: 'holding', width: 9 },
  { figure: keyFigures[2]!, heading: 'mass', width: 8 },
  { figure: keyFigures[6]!, heading: 'score', width: 8 },
];
const figuresWidth = columns.reduce((sum, { width }) => sum + width, 0);

/** What `compare` says. */
export function comparisonText(comparison: Comparison, width: number): string {
  const { decisions, candidate } = comparison;
  return [
    ...decisionLines(decisions.earlier, width),
    ...decisionLines(decisions.later, width),
    '',
    ...(candidate === null
      ? ['The two have no candidate in common.']
      : figureLines(comparison, candidate, width)),
    ...spreadLines(comparison, width),
    '',
    ...rankingLines(comparison, width),
    ...programLines(comparison, width),
  ].join('\n');
}

function decisionLines(record: DecisionRecord, width: number): string[] {
  const { id, decision, choice, because } = record;
  return wrapped(printable(`${id}: ${decision} ${choice.label}: “${quoted(because, 300)}”`), width, '', '  ');
}

function figureLines(
  { explained, decisions }: Comparison,
  { id, label }: { id: string; label: string },
  width: number,
): string[] {
  const { earlier, later, singles, together } = explained;
  const nameWidth = width - figuresWidth;
  const row = (name: string, cells: string[]) => rowLines(name, cells, nameWidth);
  const absolute = (standing: Standing) =>
    columns.map(({ figure }) => {
      const value = figure.read(standing.candidates.find((entry) => entry.id === id)!);
      return value === null ? '–' : figure.show(value);
    });
  const relative = (moves: readonly CandidateMove[]) =>
    columns.map(({ figure }) => {
      const difference = moveOf(moves, id, figure.name);
      return difference === null ? '–' : signed(difference, figure);
    });
  const headings = columns.map(({ heading }) => heading);
  const changes = singles.flatMap(({ change, moves }) =>
    row(`  ${printable(`${change.name}: ${change.earlier} → ${change.later}`)}`, relative(moves)),
  );
  if (singles.length === 0) changes.push('  nothing that could move a figure');
  return [
    ...row(printable(label), headings),
    ...row(decisions.earlier.id, absolute(earlier)),
    ...changes,
    ...(singles.length > 1
      ? remainderLines(
          singles.map(({ moves }) => moves),
          together,
          id,
          row,
        )
      : []),
    ...row('  all together', relative(together)),
    ...row(decisions.later.id, absolute(later)),
  ];
}

/** What the changes do only in company, where that shows. */
function remainderLines(
  singles: CandidateMove[][],
  together: CandidateMove[],
  id: string,
  row: (name: string, cells: string[]) => string[],
): string[] {
  const cells = columns.map(({ figure }) => {
    const all = moveOf(together, id, figure.name);
    const alone = singles.map((moves) => moveOf(moves, id, figure.name));
    if (all === null || alone.some((move) => move === null)) return '–';
    return signed(all - alone.reduce<number>((sum, move) => sum + move!, 0), figure);
  });
  return cells.every((cell) => cell === '0') ? [] : row('  only in company', cells);
}

function moveOf(moves: readonly CandidateMove[], id: string, figure: string): number | null {
  return moves.find(({ candidate }) => candidate === id)?.differences[figure] ?? null;
}

/** A long name carries on below; the figures stand beside its last line. */
function rowLines(name: string, cells: string[], nameWidth: number): string[] {
  const lines = wrapped(name.trimStart(), nameWidth - 1, name.startsWith(' ') ? '  ' : '', '    ');
  const figures = cells.map((cell, index) => fitted(cell, columns[index]!.width, 'right')).join('');
  return lines.map((line, index) =>
    index === lines.length - 1 ? fitted(line, nameWidth) + figures : fitted(line, nameWidth).trimEnd(),
  );
}

function spreadLines({ spreads }: Comparison, width: number): string[] {
  if (spreads.length === 0) return [];
  const named = spreads.map(({ name, earlier, later }) => `${name} (${earlier} → ${later})`).join(', ');
  return ['', ...wrapped(printable(`Known better or worse than before: ${named}`), width, '', '  ')];
}

/** Order and verdict then and now, as filed where that can be read, and which change alone brings another leader. */
function rankingLines({ filed, explained, decisions }: Comparison, width: number): string[] {
  const ids = (standing: { candidates: readonly { id: string }[] }) =>
    standing.candidates.map(({ id }) => id).join(', ');
  const verdicts = [decisions.earlier.verdict, decisions.later.verdict];
  const said =
    verdicts[0] === verdicts[1]
      ? [`Verdict then and now: ${verdicts[0]}`]
      : [`Verdict then: ${verdicts[0]}`, `Verdict now:  ${verdicts[1]}`];
  return [
    `Ranking then: ${ids(filed.earlier ?? explained.earlier)}`,
    `Ranking now:  ${ids(filed.later ?? explained.later)}`,
    ...said,
    leadWords(explained),
  ].flatMap((line) => wrapped(printable(line), width, '', '  '));
}

/** Who leads on the figures as they stand, and what turns it. */
function leadWords({ earlier, later, singles }: Comparison['explained']): string {
  const [before, after] = [earlier.leader ?? 'nobody', later.leader ?? 'nobody'];
  const turning = singles.filter(({ leader }) => (leader ?? 'nobody') !== before);
  const names = turning.map(({ change }) => change.name).join(', ');
  const alone = names === '' ? 'no single change does that alone' : `alone does it ${names}`;
  if (before !== after) return `On figures as they stand ${before} led and ${after} leads now; ${alone}.`;
  const turns = names === '' ? '' : `; alone another leader brings ${names}`;
  return `On figures as they stand ${before} leads in both${turns}.`;
}

/** What moved although the inputs did not: figures that were filed otherwise than they are computed now. */
function programLines({ decisions, filed, explained, candidate }: Comparison, width: number): string[] {
  if (candidate === null) return [];
  const parts = [
    { decision: decisions.earlier, results: filed.earlier, standing: explained.earlier },
    { decision: decisions.later, results: filed.later, standing: explained.later },
  ];
  return parts.flatMap(({ decision, results, standing }) => {
    const of = ({ candidates }: Pick<Standing, 'candidates'>) =>
      candidates.find(({ id }) => id === candidate.id);
    const [before, after] = [results === null ? undefined : of(results), of(standing)];
    if (before === undefined || after === undefined) return [];
    // A filed score may rest on draws; what a candidate does is the same with and without them.
    const moved = columns.filter(
      ({ figure }) => figure.name !== 'score' && differs(figure.read(before), figure.read(after)),
    );
    if (moved.length === 0) return [];
    const figures = moved.map(({ figure }) => {
      const value = figure.read(before);
      return `${figure.name} ${value === null ? '–' : figure.show(value)}`;
    });
    const text = `${decision.id} was filed by version ${decision.version}, model ${decision.modelVersion}, with ${figures.join(', ')}.`;
    return wrapped(printable(text), width, '', '  ');
  });
}

/** The same for programs. */
export function comparisonData({ decisions, filed, explained, spreads, candidate }: Comparison): object {
  const named = ({ name, kind, earlier, later }: Comparison['spreads'][number]) => ({
    name,
    kind,
    earlier,
    later,
  });
  return {
    decisions,
    filed,
    candidate,
    earlier: explained.earlier,
    later: explained.later,
    changes: explained.singles.map(({ change, ...effect }) => ({ ...named(change), ...effect })),
    together: explained.together,
    spreads: spreads.map(named),
  };
}
