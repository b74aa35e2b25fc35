import { describe, expect, it } from 'vitest';
import { runDownBand } from '../../../src/assess/certainty/run-down-bands.js';
import type { Ensemble } from '../../../src/simulate/ensemble/ensemble.js';
import type { RunDownSeries } from '../../../src/simulate/outcome.js';
import { run } from '../hand-made.js';
import { columnsOf } from './drawn.js';

const runtimesS = Array.from({ length: 11 }, (_, draw) => 1000 + draw * 100);
const ensemble = {
  candidateIds: ['a'],
  outcomes: [columnsOf(runtimesS.length, { runtimeS: runtimesS })],
} as unknown as Ensemble;

const empty: RunDownSeries = { timesS: [], lowestVoltagesV: [], meanVoltagesV: [], socFractions: [] };
const kept = (endS: number): RunDownSeries => ({
  ...empty,
  ...{ timesS: [0, endS], lowestVoltagesV: [8, 6], meanVoltagesV: [8, 6], socFractions: [1, 0.2] },
});

const bandWith = (seriesOf: (draw: number) => RunDownSeries) =>
  runDownBand('a', ensemble, (draw) => {
    const one = run('a');
    return { ...one, series: { ...one.series, runDown: seriesOf(draw) } };
  });

describe('the run on one pack in three draws', () => {
  it('ends at the 10, 50 and 90 % point of the runtimes', () => {
    expect(bandWith((draw) => kept(runtimesS[draw]!))?.endTimesS).toEqual([1100, 1500, 1900]);
  });

  it('is not told where one of them is too long for its voltages to be kept', () => {
    expect(bandWith((draw) => (draw < 9 ? kept(runtimesS[draw]!) : empty))).toBeNull();
  });
});
