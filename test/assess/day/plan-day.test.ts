import { describe, expect, it } from 'vitest';
import { planDay } from '../../../src/assess/day/plan-day.js';
import { stillCurrentA } from '../../../src/assess/day/rest-current.js';
import { simulateCandidate } from '../../../src/simulate/candidate.js';
import type { Study } from '../../../src/study/study.js';
import type { Load } from '../../../src/study/supply.js';
import { plainCandidate, plainPack, plainStudy } from '../../simulate/plain-study.js';
import { run } from '../hand-made.js';
import { block } from './block.js';

const swap = { swapAllowed: true };
const parade = [
  block('first half', 50, 'show'),
  block('pause', 15, 'off', swap),
  block('second half', 45, 'show'),
];

/** A day with a drive that runs so many minutes on one pack. */
function planned(
  minutes: number | null,
  parts: Partial<Study> = {},
  outcome: Parameters<typeof run>[1] = {},
) {
  const study = plainStudy({
    day: parade,
    pack: plainPack('lipo', { massKg: 0.13 }),
    packsCarriedCount: 2,
    ...parts,
  });
  const runtimeS = minutes === null ? null : minutes * 60;
  const warningS = null;
  const { nominal } = run('servo', { runtimeS, warningS, endReason: 'reserve', ...outcome });
  return planDay(study, study.candidates[0]!, nominal)!;
}

describe('the day', () => {
  it('is null without a day.csv', () => {
    expect(planDay(plainStudy(), plainStudy().candidates[0]!, run('x').nominal)).toBeNull();
  });

  it('is done on one pack where one lasts', () => {
    const plan = planned(120);
    expect(plan).toMatchObject({ status: 'done', swapCount: 0, packsNeededCount: 1, darkS: 0 });
    expect(plan.summary).toMatch(/^One pack does the day; 37 % is left/);
  });

  it('takes the swap in the pause', () => {
    const plan = planned(60);
    expect(plan).toMatchObject({ status: 'done', swapCount: 1, packsNeededCount: 2, swapWorkTimeS: 600 });
    expect(plan.swaps[0]).toMatchObject({ block: 'pause', blockIndex: 1, timeS: 3000, fitsBlock: true });
    expect(plan.summary).toMatch(/2 packs do the day with 1 swap, in “pause” after 50 min/);
  });

  it('says that more packs are needed, and where the power would end', () => {
    const plan = planned(60, { packsCarriedCount: 1 });
    expect(plan).toMatchObject({ status: 'more-packs', packsNeededCount: 2 });
    expect(plan.summary).toMatch(
      /1 pack is not enough: in “second half” the power ends after 75 min of the day.*It takes 2\./,
    );
    expect(plan.neededBodyMassKg! - plan.bodyMassKg!).toBeCloseTo(0.13, 12);
  });

  it('says that no number of packs does it where a stretch without a swap is too long', () => {
    const plan = planned(40);
    expect(plan).toMatchObject({ status: 'stretch-too-long', packsNeededCount: null });
    expect(plan.summary).toMatch(
      /No number of packs.*only in “pause”.*“first half” the power ends after 40 min/,
    );
    expect(plan.darkS).toBeCloseTo(15 * 60, 3);
  });

  it('cannot be planned for a drive that cannot play', () => {
    const plan = planned(null);
    expect(plan).toMatchObject({ status: 'cannot-play', segments: [], packsNeededCount: null });
    expect(plan.darkS).toBe(95 * 60);
  });

  it('swaps before the warning where the allowed blocks permit it', () => {
    const oneMore = [block('early', 20, 'show'), block('stop', 5, 'off', swap), ...parade];
    // The warning comes after 60 of 120 minutes: 20 + 50 minutes are beyond it, so the early stop is used.
    const careful = planned(120, { day: oneMore, packsCarriedCount: 3 }, { warningS: 60 * 60 });
    expect(careful.status).toBe('done');
    expect(careful.swaps.map(({ block: name }) => name)).toEqual(['stop', 'pause']);
    expect(careful.warningToEndS).toBe(60 * 60);
    expect([careful.packsNeededCount, careful.packsBeforeWarningCount]).toEqual([1, 3]);
  });

  it('goes past the warning rather than dark, and says so', () => {
    const plan = planned(60, {}, { warningS: 30 * 60 });
    expect(plan).toMatchObject({
      status: 'past-warning',
      darkS: 0,
      packsNeededCount: 2,
      packsBeforeWarningCount: null,
    });
    expect(plan.summary).toMatch(/beyond its warning/);
  });

  it('finds a swap that takes longer than its block', () => {
    const plan = planned(60, {}, { swapTimeS: 20 * 60 });
    expect(plan.swaps[0]!.fitsBlock).toBe(false);
    expect(plan.summary).toMatch(/A swap takes 20 min, longer than “pause” lasts/);
  });

  it('never warns of an end that comes without a warning', () => {
    expect(planned(60).warningToEndS).toBeNull();
  });
});

const controller: Load = {
  id: 'controller',
  label: 'controller',
  powerW: 0.5,
  voltageV: 5,
  converterEfficiency: 0.8,
  idlePowerW: 0.05,
  drawnWhen: 'always',
  note: '',
};
const lamps: Load = { ...controller, id: 'lamps', powerW: 4, idlePowerW: 0.1, drawnWhen: 'lights' };

describe('what the day draws', () => {
  it('powered and resting: idle drives, what is always on, idling converters', () => {
    const study = plainStudy({ loads: [controller, lamps] });
    expect(stillCurrentA(study, study.candidates[0]!)).toBeCloseTo(0.01 + (0.5 / 0.8 + 0.05 + 0.1) / 7.4, 12);
    const unpowered = plainCandidate('worm-gearmotor', { poweredAtRest: false });
    expect(stillCurrentA(study, unpowered)).toBeCloseTo((0.5 / 0.8 + 0.05 + 0.1) / 7.4, 12);
  });

  it('the idle current of a drive behind a regulator is referred to the pack', () => {
    const study = plainStudy();
    const regulated = plainCandidate('position-servo', {
      supply: 'regulated',
      regulatorVoltageV: 6,
      regulatorEfficiency: 0.9,
    });
    expect(stillCurrentA(study, regulated)).toBeCloseTo((0.01 * 6) / 0.9 / 7.4, 12);
  });

  it('the show empties a pack in exactly its runtime', () => {
    const study = plainStudy({ loads: [controller] });
    const { nominal } = simulateCandidate(study, study.candidates[0]!);
    const whole = { ...study, day: [block('show', nominal.runtimeS! / 60, 'show')] };
    const plan = planDay(whole, study.candidates[0]!, nominal)!;
    expect(plan.status).toBe('done');
    expect(plan.packs[0]!.socEndFraction).toBeCloseTo(plan.endSocFraction, 9);
    // 2.2 Ah, a fifth of it in reserve.
    expect(plan.blocks[0]!.chargeC).toBeCloseTo(0.8 * 2.2 * 3600, 6);
    expect(plan.blocks[0]!.meanCurrentA / nominal.meanPackCurrentA!).toBeCloseTo(1, 1);
  });

  it('the charge of the blocks is what leaves the packs', () => {
    const plan = planned(60, { loads: [controller], day: [block('wait', 30, 'still'), ...parade] });
    const leftC = plan.packs.map(({ socEndFraction }) => (1 - socEndFraction) * 2.2 * 3600);
    const usedC = plan.blocks.reduce((sum, { chargeC }) => sum + chargeC, 0);
    expect(leftC[0]! + leftC[1]!).toBeCloseTo(usedC, 6);
  });
});

describe('what to bring', () => {
  const items = (plan: ReturnType<typeof planned>) => plan.bring.map(({ item }) => item);
  const falling = { ...run('x').nominal.powerCut, stays: false, impactEnergyJ: 1.2 };

  it('has a reason for each thing', () => {
    const { bring } = planned(60);
    expect(bring.length).toBeGreaterThan(6);
    for (const { item, count, reason } of bring) {
      expect(count).toBeGreaterThan(0);
      expect(`${item}: ${reason}`.length).toBeLessThan(110);
      expect(reason.length).toBeGreaterThan(10);
    }
  });

  it('a pack more than the day takes', () => {
    expect(planned(60).bring[0]).toMatchObject({ item: 'pack (pack)', count: 3 });
  });

  it('a stop or tether only where the feature falls', () => {
    expect(items(planned(60, {}, { powerCut: falling }))).toContain('stop or tether');
    expect(items(planned(60))).not.toContain('stop or tether');
  });

  it('a charger only where there is a socket, fuses of the fitted rating', () => {
    const socket = [block('hall', 10, 'off', { charger: true, ...swap }), ...parade];
    expect(items(planned(60, { day: socket }))).toContain('charger and its lead');
    expect(items(planned(60))).not.toContain('charger and its lead');
    const fused = { wiring: { ...plainStudy().wiring, fuseRatingA: 7.5 } };
    expect(items(planned(60, fused))).toContain('fuse of 7.5 A');
    expect(items(planned(60))).toContain('fuse and holder');
  });

  it('an alarm where a warning comes, a timer where none does', () => {
    expect(items(planned(60))).toContain('timer');
    expect(items(planned(60, {}, { warningS: 3000 }))).toContain('low-voltage alarm');
  });

  it('no pouch for nickel metal hydride', () => {
    expect(items(planned(60))).toContain('fire-safe pouch');
    expect(items(planned(60, { pack: plainPack('nimh') }))).not.toContain('fire-safe pouch');
  });
});
