import { describe, expect, it } from 'vitest';
import { supplyCautions } from '../../src/assess/cautions/supply.js';
import {
  fuseContinuousA,
  packContinuousA,
  protectionOf,
  wireContinuousA,
} from '../../src/assess/protection.js';
import type { SupplyDemand } from '../../src/simulate/outcome.js';
import type { Study } from '../../src/study/study.js';
import { candidate, pack, run, study } from './hand-made.js';

const board = (demand: Partial<SupplyDemand>, changes: Partial<Study> = {}) => {
  const one = candidate('a');
  const base = run('a');
  return protectionOf(study([one], [], changes), one, { ...base, demand: { ...base.demand, ...demand } });
};

const wiring = study([], []).wiring;

describe('what pack, fuse and wire carry', () => {
  it('a label of 10C on 2 Ah is worth 20 A', () => {
    expect(packContinuousA(pack)).toBeCloseTo(20, 12);
  });

  it('no label is believed beyond 25C', () => {
    expect(packContinuousA({ ...pack, dischargeRatingPerH: 60 })).toBeCloseTo(50, 12);
  });

  it('without a label nothing is claimed', () => {
    expect(packContinuousA({ ...pack, dischargeRatingPerH: null })).toBeNull();
  });

  it('a fuse carries three quarters of its rating for long (common guidance of fuse makers)', () => {
    expect(fuseContinuousA({ ...wiring, fuseRatingA: 10 })).toBeCloseTo(7.5, 12);
  });

  it('a wire of 1 mm² carries 10 A, and 16 times the area 8 times as much', () => {
    expect(wireContinuousA({ ...wiring, areaM2: 1e-6 })).toBeCloseTo(10, 12);
    expect(wireContinuousA({ ...wiring, areaM2: 16e-6 })).toBeCloseTo(80, 12);
  });
});

describe('a wire thinner than the rule of area reaches', () => {
  const thread = { ...wiring, areaM2: 0.05e-6, fuseRatingA: null };

  it('carries no more than 17 A/mm²', () => {
    expect(wireContinuousA(thread)).toBeCloseTo(0.85, 12);
  });

  it('raises the caution where the show takes more, and lowers what the board may trip at', () => {
    const one = candidate('a');
    const base = run('a');
    const demand = { ...base.demand, meanCurrentA: 0.9, tenSecondCurrentA: 0.9, peakCurrentA: 0.9 };
    const judged = { study: study([one], [], { wiring: thread }), candidate: one, run: { ...base, demand } };
    expect(supplyCautions(judged).map(({ code, severity }) => `${severity} ${code}`)).toContain(
      'severe wire',
    );
    // 0.85 A, half as much again for a while: a board of 1.5 A trips too late.
    expect(board({ peakCurrentA: 0.9 }, { wiring: thread }).adviceTripA).toBeNull();
  });
});

describe('which board it needs', () => {
  it('one that stays out of the show by a quarter', () => {
    expect(board({ peakCurrentA: 3.2 })).toMatchObject({ adviceTripA: 4, adviceDelayS: 0.02 });
  });

  it('one above the start-up surge where pack and wire bear that', () => {
    expect(board({ peakCurrentA: 2, startUpCurrentA: 10 })).toMatchObject({
      adviceTripA: 11,
      adviceDelayS: 0.02,
    });
  });

  it('one that waits out a surge larger than pack and wire may be trusted with', () => {
    // 20 A is what the pack bears; the surge lasts 3 × 15 ms, the board waits twice that.
    const advice = board({ peakCurrentA: 2, startUpCurrentA: 30 });
    expect(advice.adviceTripA).toBe(2.5);
    expect(advice.adviceDelayS).toBeCloseTo(0.09, 12);
  });

  it('none where even the show is too much; then fuse, alarm and another cue list, never nothing', () => {
    const advice = board({ peakCurrentA: 30 });
    expect(advice).toMatchObject({ adviceTripA: null, adviceDelayS: null });
    expect(advice.advice).toMatch(/fuse/);
    expect(advice.advice).toMatch(/low-voltage alarm/);
    expect(advice.advice).toMatch(/cue list/);
  });

  it('one that also guards the wire where no fuse does', () => {
    const thin = { ...wiring, areaM2: 0.2e-6, fuseRatingA: null };
    // 0.2 mm² carries 3.0 A, 4.5 A for a while: a show of 4 A leaves no room for a board.
    expect(board({ peakCurrentA: 4 }, { wiring: thin }).adviceTripA).toBeNull();
    expect(board({ peakCurrentA: 4 }, { wiring: { ...thin, fuseRatingA: 4 } }).adviceTripA).toBe(5);
  });

  it('cannot be said for a drive that does not play the cue list', () => {
    expect(board({ peakCurrentA: null }).advice).toMatch(/cannot play/);
  });

  it.each([
    ['will do', { protectionTripA: 10, protectionDelayS: 0.1 }, {}],
    [
      'will do, since it waits out the surge',
      { protectionTripA: 4, protectionDelayS: 0.1 },
      { startUpCurrentA: 10 },
    ],
    ['trips too early', { protectionTripA: 2.4, protectionDelayS: 0.1 }, {}],
    ['does not wait long enough', { protectionTripA: 4, protectionDelayS: 0.05 }, { startUpCurrentA: 10 }],
    ['trips too late for pack and wire', { protectionTripA: 25, protectionDelayS: 0.1 }, {}],
    ['will do if it waits 90 ms', { protectionTripA: 4, protectionDelayS: null }, { startUpCurrentA: 10 }],
  ])('and whether the fitted one %s', (verdict, fitted, demand) => {
    const { advice } = board(demand, { wiring: { ...wiring, ...fitted } });
    expect(advice).toMatch(new RegExp(`The fitted one, .* ${verdict.replace(/,.*/, '')}\\.$`));
  });
});
