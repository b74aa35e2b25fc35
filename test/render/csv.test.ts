import { describe, expect, it } from 'vitest';
import { decode } from '../../src/input/decode.js';
import { dialectOf } from '../../src/input/dialect.js';
import { recordsOf } from '../../src/input/records.js';
import { renderCsv } from '../../src/render/csv/render-csv.js';
import { formats } from '../../src/render/index.js';
import { type ExportTable, toResults } from '../../src/report/index.js';
import { exportTable } from '../../src/report/pages.js';
import { createDrawnAssessment } from '../report/fixture.js';

const table = exportTable(toResults(createDrawnAssessment()));

/** The cells that our own reader finds in a text, and what it had to say. */
function readBack(text: string): string[][] {
  const file = { name: 'ranking.csv', bytes: new TextEncoder().encode(text) };
  const report = (place: object, trouble: object) => {
    throw new Error(JSON.stringify({ place, trouble }));
  };
  const dialect = dialectOf(decode(file, report)!);
  return recordsOf(dialect.text, dialect.delimiter, file.name, report)!.map(({ cells }) => cells);
}

const oneCell = (cell: string): ExportTable => ({ header: ['label', 'figure'], rows: [[cell, -1.5]] });

describe('the ranking for a spreadsheet', () => {
  it('has one row for each candidate, as wide as the header, in rank order', () => {
    expect(table.rows.map(([rank]) => rank)).toEqual(table.rows.map((_, index) => index + 1));
    for (const row of table.rows) expect(row).toHaveLength(table.header.length);
  });

  it('names every column once and gives the unit of every figure', () => {
    expect(new Set(table.header).size).toBe(table.header.length);
    const bare = ['rank', 'score', 'cue fidelity', 'torque margin'];
    const figures = table.header.filter((_, index) =>
      table.rows.some((row) => typeof row[index] === 'number'),
    );
    const unitless = figures.filter((name) => !/\[.+\]$/.test(name));
    expect(unitless.filter((name) => !bare.some((known) => name.startsWith(known)))).toEqual([]);
  });

  it('holds nominal figure, band, limits and shares of a candidate in the units that people read', () => {
    const assessment = createDrawnAssessment();
    const [first] = assessment.candidates;
    const row = Object.fromEntries(table.header.map((name, index) => [name, table.rows[0]![index]]));
    const band = first!.uncertain.runtimeS!;
    expect(row['runtime [min]']).toBeCloseTo(first!.nominal.runtimeS! / 60, 3);
    expect(row['runtime median [min]']).toBeCloseTo(band.median / 60, 3);
    expect(row['runtime p10 [min]']).toBeCloseTo(band.p10 / 60, 3);
    expect(row['runtime p90 [min]']).toBeCloseTo(band.p90 / 60, 3);
    expect(row['case temperature [°C]']).toBeCloseTo(first!.nominal.caseTemperatureK! - 273.15, 2);
    expect(row['share leading [%]']).toBeCloseTo(
      assessment.certainty!.candidates[first!.id]!.leadProbability! * 100,
      3,
    );
    expect(Object.keys(row).filter((name) => name.startsWith('limit: '))).toHaveLength(
      3 *
        new Set(assessment.candidates.flatMap(({ limits }) => limits.map(({ criterion }) => criterion))).size,
    );
  });

  it('carries the columns of the user', () => {
    const results = toResults(createDrawnAssessment());
    results.study.candidates[0]!.extra = { my_shelf: 'B4' };
    const extended = exportTable(results);
    const index = extended.header.indexOf('my_shelf');
    expect(extended.rows.map((row) => row[index])).toContain('B4');
  });

  it.each(['point', 'comma'] as const)('reads back through the reader of studies, decimal %s', (decimal) => {
    const text = renderCsv(table, decimal);
    expect(text.startsWith('\ufeff')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const mark = (value: number) => String(value).replace('.', decimal === 'comma' ? ',' : '.');
    const cells = table.rows.map((row) =>
      row.map((cell) => (typeof cell === 'number' ? mark(cell) : (cell ?? ''))),
    );
    expect(readBack(text)).toEqual([table.header, ...cells]);
  });

  it('is a format like the others', async () => {
    const results = toResults(createDrawnAssessment());
    const settings = { pageSize: 'A4' as const, width: 80, colour: false, decimal: 'comma' as const };
    const { bytes } = await formats.csv.render({ results } as never, settings);
    expect(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)).toBe(renderCsv(table, 'comma'));
  });
});

describe('a text that a spreadsheet would run', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\t=1', "\t'=1"],
    ['\r=1', "\r'=1"],
    [' =1', " '=1"],
    ['＝1', "'＝1"],
    ["'=1", "''=1"],
    ['a,=1', "a,'=1"],
    ['a;=1', "a;'=1"],
    ['a\t=1', "a\t'=1"],
    ['a\n=1', "a\n'=1"],
    ['a"=1', 'a"\'=1'],
    ['a";"=1', 'a";"\'=1'],
    ["=cmd|' /C calc'!A0", "'=cmd|' /C calc'!A0"],
  ])('%j is shown and not run', (cell, shown) => {
    const [, [label]] = readBack(renderCsv(oneCell(cell))) as [string[], string[]];
    expect(label).toBe(shown.replace(/\r/g, '\n'));
  });

  it.each(['servo 7.4 V', 'a=b', 'x-axis', '12 V - 5 A', 'me@example', 'say "hello", then go', '5 kg, 3 cm'])(
    '%j is left as it is',
    (cell) => {
      expect(readBack(renderCsv(oneCell(cell)))[1]).toEqual([cell, '-1.5']);
    },
  );

  it('leaves negative numbers numbers, with a decimal comma too', () => {
    expect(renderCsv(oneCell('a'))).toContain('\r\na,-1.5\r\n');
    expect(renderCsv(oneCell('a'), 'comma')).toContain('\r\na;-1,5\r\n');
  });
});
