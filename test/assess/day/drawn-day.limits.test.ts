import { describe, expect, it } from 'vitest';
import { dayCautions } from '../../../src/assess/cautions/day.js';
import { drawnDay } from '../../../src/assess/day/drawn-day.js';
import { planDay } from '../../../src/assess/day/plan-day.js';
import { plainPack, plainStudy } from '../../simulate/plain-study.js';
import { columnsOf } from '../certainty/drawn.js';
import { run } from '../hand-made.js';
import { block } from './block.js';

const swap = { swapAllowed: true };
const longParade = [block('dress', 20, 'still', swap), block('parade', 70, 'show')];
const halves = [
  block('first half', 50, 'show'),
  block('pause', 15, 'off', swap),
  block('second half', 45, 'show'),
];

/** A day with two packs and a drive that nominally runs 130 min, and the minutes it runs in ten draws. */
function planned(day: typeof halves, minutes: number[], packsCarriedCount = 2) {
  const study = plainStudy({ day, pack: plainPack('lipo', { massKg: 0.13 }), packsCarriedCount });
  const { nominal } = run('servo', { runtimeS: 130 * 60, warningS: null, endReason: 'reserve' });
  const columns = columnsOf(10, {
    runtimeS: minutes.map((value) => value * 60),
    warningS: minutes.map(() => Number.NaN),
    meanPackCurrentA: minutes.map(() => nominal.meanPackCurrentA!),
  });
  const candidate = study.candidates[0]!;
  return planDay(study, candidate, nominal, drawnDay(study, candidate, nominal, columns))!;
}

describe('the day in the draws', () => {
  it('is not promised where a block without a swap outlasts the pack in most of them', () => {
    const plan = planned(longParade, [40, 45, 50, 55, 56, 60, 80, 90, 100, 110]);
    expect(plan).toMatchObject({ status: 'done', packsNeededCount: 1 });
    expect(plan).toMatchObject({ doneProbability: 0.4, packsSureCount: null, sureBodyMassKg: null });
    expect(plan.summary).toMatch(/^With 2 packs the day is done in only 40 % of the draws\./);
    expect(plan.bring[0]!.reason).toMatch(/no number does the day in nine draws in ten/);
    expect(dayCautions(plan)).toMatchObject([
      { code: 'day-not-sure', severity: 'caution', figure: 'done in 40 % of the draws' },
    ]);
  });

  it('takes as many packs as nine draws in ten need', () => {
    const enoughWithTwo = [40, 60, 60, 60, 60, 100, 100, 100, 100, 100];
    const plan = planned(halves, enoughWithTwo);
    expect(plan).toMatchObject({ packsNeededCount: 1, packsSureCount: 2, doneProbability: 0.9 });
    expect(plan.sureBodyMassKg! - plan.neededBodyMassKg!).toBeCloseTo(0.13, 12);
    expect(dayCautions(plan)).toEqual([]);
    const carryingOne = planned(halves, enoughWithTwo, 1);
    expect(carryingOne.doneProbability).toBe(0.5);
    expect(dayCautions(carryingOne)).toMatchObject([{ severity: 'note', action: 'Carry 2 packs.' }]);
  });

  it('is not done in a draw that cannot play the show', () => {
    expect(planned(halves, [Number.NaN, ...Array(9).fill(130)]).doneProbability).toBe(0.9);
  });
});
