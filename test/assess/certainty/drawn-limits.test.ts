import { describe, expect, it } from 'vitest';
import { drawnFigures } from '../../../src/assess/certainty/drawn-figures.js';
import { drawnLimits } from '../../../src/assess/certainty/drawn-limits.js';
import { drawnStudy, utilitiesOf } from '../../../src/assess/certainty/drawn-study.js';
import { drawnFindings, passesOnPaper } from '../../../src/assess/certainty/findings.js';
import { tier } from '../../../src/assess/choosing/drawn-worths.js';
import { standings } from '../../../src/assess/choosing/own-weights.js';
import { limitsOf } from '../../../src/assess/limits.js';
import { candidate, criterion, run, study } from '../hand-made.js';
import { columnsOf, drawn, limit } from './drawn.js';

const none = Number.NaN;

describe('limits in the draws', () => {
  it('hold in the share of draws in which the figure is inside', () => {
    const now = drawn('now', 4, { runtimeS: [10, 20, 30, 40], peakPackCurrentA: [1, 2, 3, 4] });
    const found = drawnLimits([limit('runtime', 20), limit('peak_current', 2, true, 'at-most')], now);
    expect(found.limitProbabilities).toEqual([0.75, 0.5]);
    expect([...found.tiers]).toEqual([tier.fails, tier.passes, tier.fails, tier.fails]);
    expect(found.passProbability).toBe(0.25);
  });

  it('of a figure that is missing stay not judged, and nothing counts as a pass', () => {
    const now = drawn('now', 2, { bodyMassKg: [none, none], runtimeS: [10, 30] });
    const found = drawnLimits([limit('body_mass', 1, null, 'at-most'), limit('runtime', 20)], now);
    expect(found.limitProbabilities).toEqual([null, 0.5]);
    expect([...found.tiers]).toEqual([tier.fails, tier.notJudged]);
    expect(found.passProbability).toBeNull();
  });

  it('fail in a draw in which the figure does not occur, and where the drive cannot do the job', () => {
    const now = drawn('now', 3, { runtimeS: [none, 30, 30], feasible: [0, 1, 0] });
    const found = drawnLimits([limit('runtime', 20)], now);
    expect(found.limitProbabilities).toEqual([2 / 3]);
    expect([...found.tiers]).toEqual([tier.fails, tier.passes, tier.fails]);
  });

  it('of fit, voltage and noise are the same in every draw', () => {
    const now = drawn('now', 2, {});
    const found = drawnLimits([limit('fits', 1, false), limit('voltage', 10), limit('noise', 50, null)], now);
    expect(found.limitProbabilities).toEqual([0, 1, null]);
  });

  it('of ways of failing hold where the drive can do the job', () => {
    const now = drawn('now', 4, { feasible: [1, 0, 1, 1] });
    expect(drawnLimits([limit('moves', 1, false)], now).limitProbabilities).toEqual([0.75]);
  });

  it('bear endless figures: a drive that does not yield withstands any push', () => {
    const now = drawn('now', 2, { pushForceN: [Infinity, 3], windingTemperatureK: [Infinity, 300] });
    const limits = [limit('push_force', 50), limit('winding_temperature', 373, true, 'at-most')];
    expect(drawnLimits(limits, now).limitProbabilities).toEqual([0.5, 0.5]);
  });
});

describe('a draw', () => {
  const criteria = [criterion('runtime', 1, [0, 100]), criterion('cost', 1, [10, 0])];
  const own = [candidate('a'), candidate('b')];
  const of = study(own, criteria);
  const judgements = own.map((entry) => ({
    judged: { study: of, candidate: entry, run: run(entry.id) },
    limits: [limit('runtime', 50)],
  }));
  const outcomes = [
    columnsOf(3, { runtimeS: [100, 40, 60], cost: [0, 0, 10] }),
    columnsOf(3, { runtimeS: [50, 60, 60], cost: [10, 10, none] }),
  ];
  const judged = drawnStudy(criteria, judgements, { candidateIds: ['a', 'b'], drawCount: 3, outcomes });

  it('is scored by the weights of the study; a figure that is missing is worth nothing', () => {
    expect([...judged.scores[0]!]).toEqual([1, 0.7, 0.3]);
    expect([...judged.scores[1]!]).toEqual([0.25, 0.3, 0.3]);
  });

  it('ranks a candidate that breaks a hard limit after those that pass, however well it scores', () => {
    const [a, b] = standings(judged.worths, judged.ownWeights);
    // First draw a, second b although a scores more, third both.
    expect([a!.leadFraction, b!.leadFraction]).toEqual([0.5, 0.5]);
  });

  it('is of no use where a limit fails', () => {
    expect([...utilitiesOf(judged)[0]!]).toEqual([1, 0, 0.3]);
  });
});

describe('what the nominal judgement takes from the draws', () => {
  const runtimes = Array.from({ length: 11 }, (_, i) => (i === 0 ? none : 100 * i));
  const figures = drawnFigures({
    drawCount: 11,
    candidateIds: ['now'],
    outcomes: [columnsOf(11, { runtimeS: runtimes, holdEffortRatio: runtimes.map((_, i) => i / 10) })],
    inputs: [],
    scheme: { generator: '', seed: 1, sobolPaths: [] },
  }).get('now')!;

  it('is the runtime that nine draws in ten exceed, no time where the show cannot be played', () => {
    expect(figures).toMatchObject({ runtimeP10S: 100, holdEffortRatio: 0.5 });
  });

  it('judges the limit on that runtime, which stays open without draws', () => {
    const must = { direction: 'at-least', bound: 90 } as const;
    const own = candidate('now');
    const of = study([own], [criterion('runtime_p10', 0, null, must)]);
    const judge = (more: object) =>
      limitsOf({ study: of, candidate: own, run: run('now'), ...more }).find(
        ({ criterion: id }) => id === 'runtime_p10',
      );
    expect(judge({ drawn: figures })).toMatchObject({ value: 100, passes: true });
    expect(judge({})).toMatchObject({ value: null, passes: null });
  });
});

describe('findings from the draws', () => {
  const nothing = drawnLimits([], drawn('now', 10, {}));
  const clipped = (times: number) =>
    columnsOf(10, { efficiencyClipped: Array.from({ length: 10 }, (_, i) => (i < times ? 1 : 0)) });

  it('call figures that do not belong together by their name from three draws in ten on', () => {
    const codes = (times: number) => drawnFindings(clipped(times), true, [], nothing).map(({ code }) => code);
    expect(codes(3)).toEqual([]);
    expect(codes(4)).toEqual(['figures-do-not-belong-together']);
  });

  it('say which limit makes a pass one on paper', () => {
    const limits = [limit('runtime', 20), limit('fits', 1)];
    const found = drawnLimits(limits, drawn('now', 10, { runtimeS: [9, 9, 9, 9, 9, 30, 30, 30, 30, 30] }));
    const [finding] = drawnFindings(clipped(0), true, limits, found);
    expect(finding).toMatchObject({ code: 'passes-on-paper' });
    expect(finding!.message).toMatch(/only in 50 % of the draws about them \(runtime in 50 %\)/);
  });

  it('a pass is on paper below four draws in five', () => {
    expect([passesOnPaper(true, 0.79), passesOnPaper(true, 0.8)]).toEqual([true, false]);
    expect([passesOnPaper(false, 0.1), passesOnPaper(true, null)]).toEqual([false, false]);
  });
});
