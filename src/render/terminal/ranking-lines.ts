import type { ReportSummary, SummaryRow } from '../../report/index.js';
import { displayWidth, fitted } from './display-width.js';
import type { Paint } from './paint.js';

interface Column {
  heading: string;
  width: number;
  align: 'left' | 'right';
  text(row: SummaryRow): string;
}

/** The ranking as a table: names and limits get what room the figures leave. */
export function rankingLines({ rows, units }: ReportSummary, width: number, paint: Paint): string[] {
  const hasDraws = rows.some((row) => row.leads !== '');
  const isWide = width >= wideFrom;
  const figure = (heading: string, columns: number, text: Column['text']): Column => ({
    ...{ heading, text, align: 'right' },
    width: Math.max(columns, heading.length),
  });
  const figures = [
    figure(
      units.runtime,
      widest(rows, (row) => row.runtime),
      (row) => row.runtime,
    ),
    ...(isWide && rows.some((row) => row.packs !== '') ? [figure('packs', 4, (row) => row.packs)] : []),
    figure(units.mass, 4, (row) => row.mass),
    figure(units.holding, 4, (row) => row.holding),
    figure(units.cost, 4, (row) => row.cost),
    figure('score', 5, (row) => row.score),
    ...(isWide && hasDraws ? [figure('leads', 4, (row) => row.leads)] : []),
  ];
  const free = width - 4 - figures.reduce((sum, column) => sum + column.width + 1, 0);
  const name = Math.ceil(free * (hasDraws ? 0.6 : 0.52));
  const columns: Column[] = [
    { heading: '# ', width: 3, align: 'right', text: markedRank },
    { heading: 'candidate', width: name, align: 'left', text: (row) => row.candidate },
    {
      heading: 'limits',
      width: Math.max(1, free - name - 1),
      align: 'left',
      text: (row) => (hasDraws ? row.limitsInShort : row.limits.replace('✗ fails: ', '✗ ')),
    },
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
    ...(rows.some((row) => row.isBaseline) || hasDraws
      ? [paint(`   ${notes(rows, hasDraws)}`, 'muted')]
      : []),
  ];
}

/** What the marks of the table mean. */
function notes(rows: SummaryRow[], hasDraws: boolean): string {
  return [
    ...(rows.some((row) => row.isBaseline) ? ['* exists today'] : []),
    ...(hasDraws ? ['(10–90 % of draws)'] : []),
  ].join('; ');
}

/** Columns from which on the table has room for packs and leads. */
const wideFrom = 76;

/** Columns that the figures of all rows take; four at least. */
function widest(rows: SummaryRow[], text: (row: SummaryRow) => string): number {
  return Math.max(4, ...rows.map((row) => displayWidth(text(row))));
}

/** The drive that exists today is marked with a star. */
function markedRank(row: SummaryRow): string {
  return row.rank + (row.isBaseline ? '*' : ' ');
}
