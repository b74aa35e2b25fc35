import { describe, expect, it } from 'vitest';
import { placeLabels } from '../../src/report/charts/place-labels.js';
import { spreadApart } from '../../src/report/charts/spread-apart.js';
import type { ChartBlock } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { bestTurn, tightest } from '../../src/report/tables/fit-table.js';
import { blocksOf, blocksText, sectionOf } from './document-text.js';
import { createAssessment, createDrawnAssessment } from './fixture.js';
import { readTemplates } from './templates.js';

const templates = readTemplates();
const assessment = createDrawnAssessment();
const report = buildReport(assessment, templates, '');
const all = report.sections.flatMap((section) => blocksOf(section.blocks, 'chart'));
const plain = buildReport(createAssessment(), templates, '').sections.flatMap((section) =>
  blocksOf(section.blocks, 'chart'),
);

interface Layer {
  data?: { values: Record<string, unknown>[] };
  mark: string | { type: string };
  encoding: Record<
    string,
    { field?: string; axis?: { title?: string | null } | null; scale?: { domain?: unknown } }
  >;
}

function chartNamed(name: string, charts = all): ChartBlock {
  const found = charts.find((chart) => chart.name === name);
  if (!found) throw new Error(`no chart ${name}`);
  return found;
}

const layersOf = (chart: ChartBlock) => chart.specification.layer as Layer[];

/** Rows of the layer that draws such a mark, of the chart itself where the layer has none. */
function rowsOf(chart: ChartBlock, mark: string): Record<string, unknown>[] {
  const layer = layersOf(chart).find(
    (one) => (typeof one.mark === 'string' ? one.mark : one.mark.type) === mark,
  );
  return layer?.data?.values ?? (chart.specification.data as { values: Record<string, unknown>[] }).values;
}

describe('charts with draws', () => {
  it('show the runtime as the interval, the median and the nominal figure of the results', () => {
    const rows = rowsOf(chartNamed('runtime-interval-against-target'), 'tick');
    assessment.candidates.forEach((candidate, index) => {
      const band = candidate.uncertain.runtimeS;
      expect(rows[index]).toMatchObject({
        low: (band?.p10 ?? 0) / 60,
        minutes: (band?.median ?? 0) / 60,
        high: (band?.p90 ?? 0) / 60,
      });
    });
    expect(rows[0]!.note).toBe('173\u00a0min (127–191)');
  });

  it('give way to bars where nothing is drawn', () => {
    expect(plain.map((chart) => chart.name)).toContain('runtime-against-target');
    expect(plain.map((chart) => chart.name)).not.toContain('runtime-interval-against-target');
  });

  it('bound the run-down by the two runs of the draws, as long as both go on', () => {
    const chart = chartNamed('voltage-over-discharge');
    const band = assessment.certainty!.runDownBands.find(({ candidate }) => candidate === 'worm-relay')!;
    const rows = rowsOf(chart, 'area').filter(({ series }) => String(series).startsWith('1 '));
    const inside = band.timesS.filter((timeS) => timeS <= band.endTimesS[0]);
    expect(rows).toHaveLength(inside.length);
    rows.forEach((row, index) => {
      expect(row).toMatchObject({
        minutes: band.timesS[index]! / 60,
        low: band.lowVoltagesV[index],
        high: band.highVoltagesV[index],
      });
    });
    expect(rowsOf(chartNamed('voltage-over-discharge', plain), 'area')).toEqual([]);
  });

  it('draw no run of which the simulation kept no voltages, and say when it ends', () => {
    const none = { timesS: [], lowestVoltagesV: [], meanVoltagesV: [], socFractions: [] };
    const long = {
      ...assessment,
      certainty: { ...assessment.certainty!, runDownBands: [] },
      candidates: assessment.candidates.map((one) => ({ ...one, series: { ...one.series, runDown: none } })),
    };
    const why = sectionOf(buildReport(long, templates, ''), 'why');
    expect(blocksOf(why.blocks, 'chart').map(({ name }) => name)).not.toContain('voltage-over-discharge');
    expect(blocksText(why.blocks)).toMatch(
      /What ends the run on one pack\?\nToo long a run to draw.*182 min, reserve reached/,
    );
  });

  it('give the bar of a candidate alone as much room as one of several has', () => {
    const barHeight = (count: number) => {
      const candidates = assessment.candidates.slice(0, count);
      const alone = buildReport({ ...assessment, candidates }, templates, '');
      const charts = alone.sections.flatMap((section) => blocksOf(section.blocks, 'chart'));
      return chartNamed('energy-per-loop', charts).aspectRatio;
    };
    // Below axis and legend a row has what a further one adds.
    expect(barHeight(1)).toBeGreaterThan(0.1);
    expect(barHeight(2) - barHeight(1)).toBeCloseTo(0.027, 9);
  });

  it('show of every rung of the ladder the gain over today, with its range', () => {
    const rows = rowsOf(chartNamed('lesser-changes'), 'bar');
    assessment.lesserChanges.forEach(({ gainBands }, index) => {
      const { p10, median, p90 } = gainBands!.score!;
      expect(rows[index]).toMatchObject({
        ...{ from: 0, score: median, low: p10, high: p90 },
      });
    });
  });

  it('read no score off above the whole, however much a change gains in the draws', () => {
    const lesserChanges = assessment.lesserChanges.map((change) => ({
      ...change,
      gainBands: { ...change.gainBands!, score: { p10: 0.2, median: 0.9, p90: 0.95, occursFraction: 1 } },
    }));
    const drawn = buildReport({ ...assessment, lesserChanges }, templates, '');
    const charts = drawn.sections.flatMap((section) => blocksOf(section.blocks, 'chart'));
    for (const { note } of rowsOf(chartNamed('lesser-changes', charts), 'bar'))
      expect(note).toMatch(/^\+0\.90,/);
  });

  it('fill every row of the rank acceptability from 0 to 100', () => {
    const rows = rowsOf(chartNamed('rank-acceptability'), 'bar');
    for (const { label } of rows) {
      const own = rows.filter((row) => row.label === label);
      expect(own[0]!.from).toBe(0);
      expect(own.at(-1)!.to).toBeCloseTo(100, 9);
    }
    expect(rows[0]).toMatchObject({ part: 'first', to: 62 });
  });

  it('draw swings from the lead as taken to the lead at either end', () => {
    const [first] = rowsOf(chartNamed('swings'), 'bar');
    // The servo of today fails a limit, so that the leader's lead is its whole score.
    expect(first).toMatchObject({ lead: 0.81, low: -0.03, high: 0.48 });
  });

  it('mark the events after which a change is paid for', () => {
    const chart = chartNamed('break-even');
    expect(JSON.stringify(chart.specification)).toContain('paid for after 34\u00a0events');
  });

  it('put every pack of the day into a lane of its own, with its charge', () => {
    const rows = rowsOf(chartNamed('day-timeline'), 'bar');
    expect(rows.filter(({ lane }) => lane === 'pack 1').map(({ note }) => note)).toEqual([
      '100 → 38\u00a0%',
      '38 → 24\u00a0%',
    ]);
    expect(rows.filter(({ lane }) => lane === 'pack 2').map(({ kind }) => kind)).toEqual(['charging']);
  });
});

describe('every chart', () => {
  const unit = /, (min|s|V|A|J|N|g|°C|%|EUR)$|score|^events$/;

  it.each([...new Set([...all, ...plain])].map((chart) => [chart.name, chart] as const))(
    '%s says on each axis what it shows and in which unit',
    (name, chart) => {
      const titles = layersOf(chart).flatMap(({ encoding }) =>
        [encoding.x?.axis, encoding.y?.axis].flatMap((axis) => (axis?.title ? [axis.title] : [])),
      );
      expect(
        titles.filter((title) => !unit.test(title)),
        name,
      ).toEqual([]);
      // The effort stands right above the current and shares its time axis.
      if (name !== 'effort-through-loop') expect(titles.length, name).toBeGreaterThan(0);
    },
  );

  it.each(all.map((chart) => [chart.name, chart] as const))(
    '%s states its finding with numbers',
    (_, chart) => {
      expect(chart.alternative).toMatch(/\d/);
      expect(chart.title.length).toBeGreaterThan(10);
    },
  );
});

describe('labels', () => {
  it('that are close together are moved apart, in their order; others stay', () => {
    expect(spreadApart([10, 10.5, 30], 2)).toEqual([9.25, 11.25, 30]);
    expect(spreadApart([], 2)).toEqual([]);
    const placed = spreadApart([1, 1, 1, 5], 2);
    expect(placed.slice(0, 3)).toEqual([-1, 1, 3]);
    expect(placed[3]).toBe(5);
  });

  it('stand where they cover no other point, and shrink where there is no such place', () => {
    const [alone] = placeLabels([{ x: 0.5, y: 0.5, notes: ['1 Worm', '1'] }], 2);
    expect(alone).toEqual({ align: 'left', dx: 6, dy: 0, note: '1 Worm' });
    const crowd = Array.from({ length: 30 }, (_, index) => ({
      x: 0.5 + (index % 6) * 0.06,
      y: 0.3 + Math.floor(index / 6) * 0.08,
      notes: ['a label that is long', `${index}`],
    }));
    expect(placeLabels(crowd, 2).some(({ note }) => note.length < 3)).toBe(true);
  });
});

describe('a drive in its space', () => {
  it('lies with its longest side along the longest of the space; no limit is endless room', () => {
    expect(bestTurn([0.03, 0.066, 0.058], [0.07, 0.26, 0.1])).toEqual([
      { driveM: 0.066, freeM: 0.26 },
      { driveM: 0.058, freeM: 0.1 },
      { driveM: 0.03, freeM: 0.07 },
    ]);
    expect(bestTurn([0.2, 0.1, 0.1], [0.15, null, 0.12])[0]).toEqual({ driveM: 0.2, freeM: null });
  });

  it('is tight where least is left', () => {
    expect(tightest(bestTurn([0.03, 0.066, 0.058], [0.07, 0.26, 0.1]))?.leftM).toBeCloseTo(0.04, 9);
    expect(tightest(bestTurn([0.3, 0.1, 0.1], [0.2, 0.2, 0.2]))?.leftM).toBeCloseTo(-0.1, 9);
    expect(tightest(bestTurn([0.1, 0.1, 0.1], [null, null, null]))).toBeNull();
  });
});
