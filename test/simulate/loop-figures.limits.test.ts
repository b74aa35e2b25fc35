import { describe, expect, it } from 'vitest';
import { prepareCandidate } from '../../src/simulate/candidate.js';
import { loopCurrents, tenSecondMeanA, worstWindowMean } from '../../src/simulate/loop-figures.js';
import { thinned } from '../../src/simulate/loop-samples.js';
import { CuePlayer, fine } from '../../src/simulate/play-loop.js';
import { steppedRunDown } from '../../src/simulate/run-down.js';
import { plainStudy } from './plain-study.js';
import { samplesOf } from './segments.js';

const pulses = samplesOf([
  { durationS: 4, currentA: 5 },
  { durationS: 6, currentA: 1 },
  { durationS: 3, currentA: 5 },
  { durationS: 12, currentA: 0 },
]);

describe('means over the repeated loop', () => {
  it('give the mean and the peak of a plain pulse train', () => {
    const { meanA, peakA } = loopCurrents(pulses, 7.4);
    expect(meanA).toBeCloseTo((4 * 5 + 6 * 1 + 3 * 5) / 25, 12);
    expect(peakA).toBe(5);
  });

  it('find the ten seconds with the largest mean, here the last ten of the pulses', () => {
    // 1 s of the first pulse, 6 s at 1 A, 3 s at 5 A; or 4 + 6 from the start: 26/10 is the larger.
    expect(tenSecondMeanA(pulses, 7.4)).toBeCloseTo((4 * 5 + 6 * 1) / 10, 12);
  });

  it('find a window that runs over the end of the loop', () => {
    const wrap = samplesOf([
      { durationS: 5, currentA: 4 },
      { durationS: 20, currentA: 0 },
      { durationS: 5, currentA: 4 },
    ]);
    expect(tenSecondMeanA(wrap, 7.4)).toBeCloseTo(4, 12);
  });

  it('over a window longer than the loop count whole loops and the worst remainder', () => {
    const on = (k: number) => (k === 0 ? 1 : 0);
    const half = samplesOf([{ durationS: 10 }, { durationS: 10 }]);
    expect(worstWindowMean(half, 50, on)).toBeCloseTo(30 / 50, 12);
    expect(worstWindowMean(half, 10, on)).toBeCloseTo(1, 12);
    expect(worstWindowMean(half, 20, on)).toBeCloseTo(0.5, 12);
  });
});

describe('a loop with four samples of a move taken together', () => {
  const study = plainStudy({
    loads: [
      {
        id: 'eyes',
        label: 'eyes',
        powerW: 5,
        voltageV: 12,
        converterEfficiency: 0.9,
        idlePowerW: 0.1,
        drawnWhen: 'always',
        note: '',
      },
    ],
  });
  const { model, pack } = prepareCandidate(study, study.candidates[0]!);
  const { samples } = new CuePlayer(model, study.show.loop, study.loads, fine).play();
  const none = samplesOf([]);

  it('keeps its length and its charge', () => {
    const thin = thinned(samples, 4);
    expect(thin.totalS).toBeCloseTo(samples.totalS, 9);
    expect(loopCurrents(thin, 7.4).meanA).toBeCloseTo(loopCurrents(samples, 7.4).meanA, 12);
  });

  it('runs as long as the finely played one within a part in ten thousand', () => {
    const full = steppedRunDown(pack, none, samples).runtimeS;
    const thin = steppedRunDown(pack, none, thinned(samples, 4)).runtimeS;
    expect(Math.abs(thin / full - 1)).toBeLessThan(1e-4);
  });
});
