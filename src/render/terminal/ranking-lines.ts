import type { ReportSummary, SummaryRow } from '../../report/index.js';
import { fitted } from './display-width.js';
import type { Paint } from './render-terminal.js';

interface Column {
  heading: string;
  width: number;
  align: 'left' | 'right';
  text(row: SummaryRow): string;
}

/** The ranking as a table: names and limits get what room the figures leave. */
export function rankingLines({ rows, units }: ReportSummary, width: number, paint: Paint): string[] {
  const figure = (heading: string, columns: number, text: Column['text']): Column => ({
    ...{ heading, text, align: 'right' },
    width: Math.max(columns, heading.length),
  });
  const figures = [
    figure(units.runtime, 4, (row) => row.runtime),
    figure(units.mass, 4, (row) => row.mass),
    figure(units.holding, 4, (row) => row.holding),
    figure(units.cost, 4, (row) => row.cost),
    figure('score', 5, (row) => row.score),
  ];
  const free = width - 4 - figures.reduce((sum, column) => sum + column.width + 1, 0);
  const name = Math.ceil(free * 0.52);
  const columns: Column[] = [
    { heading: '# ', width: 3, align: 'right', text: markedRank },
    { heading: 'candidate', width: name, align: 'left', text: (row) => row.candidate },
    {
      heading: 'limits',
      width: Math.max(1, free - name - 1),
      align: 'left',
      text: (row) => row.limits.replace('✗ fails: ', '✗ '),
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
    ...(rows.some((row) => row.isBaseline) ? [paint('   * exists today', 'muted')] : []),
  ];
}

/** The drive that exists today is marked with a star. */
function markedRank(row: SummaryRow): string {
  return row.rank + (row.isBaseline ? '*' : ' ');
}
