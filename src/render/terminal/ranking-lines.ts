import type { ReportSummary, SummaryRow } from '../../report/index.js';
import { displayWidth, fitted, wrapped } from './display-width.js';
import type { Paint } from './paint.js';

interface Column {
  heading: string;
  width: number;
  align: 'left' | 'right';
  text(row: SummaryRow): string;
}

/** The ranking as a table: names get what room the figures leave, and no figure is ever cut. */
export function rankingLines({ rows, units }: ReportSummary, width: number, paint: Paint): string[] {
  const hasDraws = rows.some((row) => row.leads !== '');
  const isWide = width >= wideFrom;
  const figure = (heading: string, text: Column['text']): Column => ({
    ...{ heading, text, align: 'right' },
    width: Math.max(...[heading, ...rows.map(text)].map(displayWidth)),
  });
  const figures = [
    figure(units.runtime, (row) => row.runtime),
    ...(isWide && rows.some((row) => row.packs !== '') ? [figure('packs', (row) => row.packs)] : []),
    figure(units.mass, (row) => row.mass),
    figure(units.holding, (row) => row.holding),
    figure(units.cost, (row) => row.cost),
    figure('score', (row) => row.score),
    ...(isWide && hasDraws ? [figure('leads', (row) => row.leads)] : []),
  ];
  const free = width - 4 - figures.reduce((sum, column) => sum + column.width + 1, 0);
  const limits: Column = { ...figure('limits', (row) => row.limitsInShort), align: 'left' };
  const columns: Column[] = [
    { heading: '# ', width: 3, align: 'right', text: markedRank },
    {
      heading: 'candidate',
      width: Math.max(1, free - limits.width - 1),
      align: 'left',
      text: (row) => row.candidate,
    },
    limits,
    ...figures,
  ];
  const line = (cells: (column: Column) => string): string =>
    columns.map((column) => fitted(cells(column), column.width, column.align)).join(' ');
  return [
    paint(
      line((column) => column.heading),
      'muted',
    ),
    ...rows.map((row) => {
      const text = line((column) => column.text(row));
      return row.isLeader ? paint(text, 'strong') : text;
    }),
    ...notes(rows, hasDraws).flatMap((note) =>
      wrapped(note, width - indent.length).map((text) => paint(indent + text, 'muted')),
    ),
    ...rows.filter(({ passes }) => passes !== true).flatMap((row) => obstacleLines(row, width)),
  ];
}

const indent = '   ';

/** What the marks of the table mean. */
function notes(rows: SummaryRow[], hasDraws: boolean): string[] {
  const marks = [
    ...(rows.some((row) => row.isBaseline) ? ['* exists today'] : []),
    ...(hasDraws ? ['(10–90 % of draws)'] : []),
  ];
  return [
    ...(marks.length === 0 ? [] : [marks.join('; ')]),
    ...(rows.some((row) => row.limitsInShort.startsWith('paper'))
      ? ['paper: passes as the figures stand, but in only so many of the draws']
      : []),
  ];
}

/** Which limits a candidate fails, or cannot be judged by, below the table where there is room for their names. */
function obstacleLines({ rank, limits }: SummaryRow, width: number): string[] {
  const head = `${rank}: `;
  return wrapped(limits, width - indent.length - head.length).map(
    (text, index) => indent + (index === 0 ? head : ' '.repeat(head.length)) + text,
  );
}

/** Columns from which on the table has room for packs and leads. */
const wideFrom = 76;

/** The drive that exists today is marked with a star. */
function markedRank(row: SummaryRow): string {
  return row.rank + (row.isBaseline ? '*' : ' ');
}
