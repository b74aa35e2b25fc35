import { describe, expect, it } from 'vitest';
import { breakEven, type ChangeEffort, eventNeeds, valueModel } from '../../src/assess/break-even.js';
import { planDay } from '../../src/assess/day/plan-day.js';
import type { DayBlock } from '../../src/study/show.js';
import { plainPack, plainStudy } from '../simulate/plain-study.js';
import { run } from './hand-made.js';

const study = plainStudy({
  targetRuntimeS: 3600,
  hourPriceMoney: 12,
  eventsPerYearCount: 5,
  packsCarriedCount: 2,
  pack: plainPack('lipo', { priceMoney: 15 }),
});
const today = { packCount: 2, swapCount: 1, swapWorkTimeS: 600, darkS: 0 };
const better = { packCount: 1, swapCount: 0, swapWorkTimeS: 0, darkS: 0 };
const effort: ChangeEffort = { costMoney: 60, workTimeS: 10 * 3600, runtimeGainS: 3600 };

describe('break-even', () => {
  it('is cost and hours over what packs, swaps and minutes save at each event', () => {
    const result = breakEven(study, today, better, effort);
    // 15 / 150 of a pack, ten minutes of handling and a ten-minute swap at 12 an hour.
    expect(result.valuePerEventMoney).toBeCloseTo(0.1 + 2 + 2, 12);
    expect(result.investmentMoney).toBeCloseTo(60 + 120, 12);
    expect(result.eventCount).toBe(Math.ceil(180 / 4.1));
    expect(result.yearCount).toBeCloseTo(44 / 5, 12);
    expect(result.sentence).toMatch(/paid for after 44 events, 8\.8 years\.$/);
  });

  it('its parts add up, and each assumption says where it comes from', () => {
    const { parts, valuePerEventMoney } = breakEven(study, today, better, effort);
    expect(parts.reduce((sum, { valueMoney }) => sum + valueMoney, 0)).toBeCloseTo(valuePerEventMoney, 12);
    for (const { basis } of Object.values(valueModel)) expect(basis).toMatch(/from experience/);
  });

  it('never comes where nothing is saved, or more is needed', () => {
    expect(breakEven(study, today, today, effort).eventCount).toBeNull();
    const worse = breakEven(study, better, today, effort);
    expect(worse.valuePerEventMoney).toBeLessThan(0);
    expect(worse.eventCount).toBeNull();
    expect(worse.sentence).toMatch(/never pays for itself/);
  });

  it('comes at once where packs need not be bought', () => {
    const cheap = { costMoney: 10, workTimeS: 0, runtimeGainS: null };
    const result = breakEven(study, { ...today, packCount: 3, swapCount: 2 }, better, cheap);
    expect(result.investmentMoney).toBeCloseTo(10 - 15, 12);
    expect(result.eventCount).toBe(0);
    expect(result.runtimePerWorkRatio).toBeNull();
  });

  it('counts minutes without power like minutes of work', () => {
    const dark = breakEven(study, { ...today, darkS: 1800 }, today, effort);
    expect(dark.valuePerEventMoney).toBeCloseTo(6, 12);
  });

  it('falls back on runtime per hour of work where work has no price', () => {
    const free = breakEven({ ...study, hourPriceMoney: 0 }, today, better, effort);
    expect(free.investmentMoney).toBe(60);
    expect(free.valuePerEventMoney).toBeCloseTo(0.1, 12);
    expect(free.runtimePerWorkRatio).toBeCloseTo(0.1, 12);
  });

  it('is not known where cost or hours are not', () => {
    const unknown = breakEven(study, today, better, { ...effort, costMoney: null });
    expect(unknown).toMatchObject({ investmentMoney: null, eventCount: null, series: { eventCounts: [] } });
    expect(unknown.sentence).toMatch(/not known/);
  });

  it('is not known where nothing says how long a show lasts: no pack is saved then, whatever the drive', () => {
    const endless = { ...study, targetRuntimeS: null, day: [] };
    expect(breakEven(endless, today, today, effort).sentence).toMatch(
      /^Whether it pays is not known: without/,
    );
    expect(breakEven({ ...endless, targetRuntimeS: 3600 }, today, today, effort).sentence).toMatch(
      /never pays/,
    );
  });

  it('the chart starts at the investment and crosses zero at the break-even', () => {
    const { series, eventCount } = breakEven(study, today, better, effort);
    expect(series.balancesMoney[0]).toBeCloseTo(-180, 12);
    const crossing = series.balancesMoney.findIndex((balance) => balance >= 0);
    expect(series.eventCounts[crossing]).toBeGreaterThanOrEqual(eventCount!);
    expect(series.eventCounts[crossing - 1]).toBeLessThan(eventCount!);
    expect(series.eventCounts.length).toBeLessThanOrEqual(51);
  });
});

describe('what an event needs', () => {
  const nominal = run('x', { runtimeS: 3000, warningS: null, endReason: 'reserve', swapTimeS: 300 }).nominal;

  it('without a day: packs for the target runtime, else one', () => {
    expect(eventNeeds({ ...study, targetRuntimeS: 7200 }, nominal, null)).toEqual({
      packCount: 3,
      swapCount: 2,
      swapWorkTimeS: 600,
      darkS: 0,
    });
    expect(eventNeeds({ ...study, targetRuntimeS: null }, nominal, null).packCount).toBe(1);
  });

  it('a pair side by side counts as two packs and one swap', () => {
    const joined = eventNeeds({ ...study, targetRuntimeS: 6000 }, nominal, null, 2);
    expect(joined).toMatchObject({ packCount: 4, swapCount: 1, swapWorkTimeS: 300 });
  });

  it('with a day: its packs and swaps, and minutes without power that no pack can help', () => {
    const show = (minutes: number): DayBlock => ({
      block: `show ${minutes}`,
      durationS: 60 * minutes,
      activity: 'show',
      swapAllowed: false,
      charger: false,
      note: '',
    });
    const pause: DayBlock = { ...show(10), block: 'pause', activity: 'off', swapAllowed: true };
    const needsOn = (day: DayBlock[], packsCarriedCount: number) => {
      const of = { ...study, day, packsCarriedCount };
      return eventNeeds(of, nominal, planDay(of, of.candidates[0]!, nominal));
    };
    expect(needsOn([show(45), pause, show(45)], 2)).toMatchObject({
      packCount: 2,
      swapCount: 1,
      swapWorkTimeS: 300,
      darkS: 0,
    });
    expect(needsOn([show(45), pause, show(45)], 1)).toMatchObject({ packCount: 2, swapCount: 1, darkS: 0 });
    const hopeless = needsOn([show(70), pause, show(45)], 2);
    expect(hopeless.packCount).toBe(2);
    expect(hopeless.darkS).toBeCloseTo(20 * 60, 3);
  });
});
