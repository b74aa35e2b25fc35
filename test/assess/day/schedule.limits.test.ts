import { describe, expect, it } from 'vitest';
import { chargeToFullS, socAfterCharge } from '../../../src/assess/day/charging.js';
import { playDay, type ScheduleParts } from '../../../src/assess/day/schedule.js';
import type { DayActivity, DayBlock } from '../../../src/study/show.js';
import { block } from './block.js';

const packChargeC = 6000;
const drawnA: Record<DayActivity, number> = { show: 1, still: 0.1, off: 0 };
const swap = { swapAllowed: true };
const charger = { charger: true };

const day = (blocks: DayBlock[], packCount: number, more: Partial<ScheduleParts> = {}) =>
  playDay({
    blocks,
    currentsA: blocks.map(({ activity }) => drawnA[activity]),
    packChargeC,
    packCount,
    floorFraction: 0,
    chargeRatePerH: 1,
    ...more,
  });
const places = ({ swaps }: ReturnType<typeof day>) =>
  swaps.map(({ block: name, timeS }) => `${name} ${timeS / 60}`);

describe('swaps in the blocks that allow them', () => {
  it('none is needed while one pack lasts', () => {
    const played = day([block('a', 50, 'show'), block('p', 10, 'off', swap), block('b', 50, 'show')], 2);
    expect(played.swaps).toEqual([]);
    expect(played.socFractions[0]).toBeCloseTo(0, 9);
    expect(played.darkS).toBe(0);
  });

  it('the last allowed block before the pack runs out is taken', () => {
    const blocks = [
      block('a', 30, 'show', swap),
      block('p', 10, 'off', swap),
      block('b', 30, 'show'),
      block('q', 10, 'off', swap),
      block('c', 60, 'show'),
    ];
    expect(places(day(blocks, 3))).toEqual(['q 70']);
  });

  it('inside a show that allows it, the pack is swapped when it is due', () => {
    const played = day([block('a', 250, 'show', swap)], 3, { floorFraction: 0.2 });
    expect(places(played)).toEqual(['a 80', 'a 160']);
    expect(played.darkS).toBeCloseTo(10 * 60, 6);
  });

  it('at the end of a still block, at the start of an off block', () => {
    expect(places(day([block('wait', 20, 'still', swap), block('a', 100, 'show')], 2))).toEqual(['wait 20']);
    expect(
      places(day([block('a', 50, 'show'), block('p', 20, 'off', swap), block('b', 60, 'show')], 2)),
    ).toEqual(['p 50']);
  });

  it('a block goes dark where no swap is allowed in time, and lights up at the next one', () => {
    const blocks = [block('a', 120, 'show'), block('p', 10, 'off', swap), block('b', 30, 'show')];
    const played = day(blocks, 2);
    expect(played.darkS).toBeCloseTo(20 * 60, 6);
    expect(played.segments.filter(({ powered }) => !powered).map(({ block: name }) => name)).toEqual(['a']);
    expect(played.segments.at(-1)).toMatchObject({ block: 'b', packIndex: 1, powered: true });
  });

  it('the segments of a day follow each other without a gap', () => {
    const played = day(
      [block('a', 90, 'show', swap), block('s', 30, 'still'), block('b', 80, 'show', swap)],
      2,
    );
    played.segments.forEach(({ startS }, i) => {
      expect(startS).toBeCloseTo(i === 0 ? 0 : played.segments[i - 1]!.endS, 6);
    });
    expect(played.segments.at(-1)!.endS).toBe(200 * 60);
  });
});

describe('charging between swaps', () => {
  it('a pack that was taken out is ready again and goes back in', () => {
    const blocks = [
      block('a', 90, 'show'),
      block('p', 10, 'off', swap),
      block('b', 90, 'show', charger),
      block('q', 10, 'off', swap),
      block('c', 90, 'show'),
    ];
    const played = day(blocks, 2);
    expect(played.darkS).toBe(0);
    expect(played.swaps.map(({ inPackIndex }) => inPackIndex)).toEqual([1, 0]);
    // From a tenth to full: 0.7 h and 0.4 h of the 90 minutes of `b`.
    expect(played.charges).toHaveLength(1);
    expect(played.charges[0]).toMatchObject({ block: 'b', packIndex: 0, startS: 100 * 60 });
    expect(played.charges[0]!.endS).toBeCloseTo((100 + 66) * 60, 6);
  });

  it('the pack in use is topped up in a pause, which saves a swap', () => {
    const pause = block('p', 100, 'off', { ...swap, ...charger });
    const played = day([block('a', 90, 'show'), pause, block('b', 90, 'show')], 2);
    expect([played.darkS, played.swaps.length, played.usedCount]).toEqual([0, 0, 1]);
    expect(played.charges[0]).toMatchObject({ block: 'p', packIndex: 0 });
  });

  it('one pack alone is charged in the pause', () => {
    const blocks = [
      block('a', 90, 'show'),
      block('p', 75, 'off', { ...swap, ...charger }),
      block('b', 90, 'show'),
    ];
    const played = day(blocks, 1);
    expect([played.darkS, played.swaps.length]).toEqual([0, 0]);
    expect(day([blocks[0]!, { ...blocks[1]!, charger: false }, blocks[2]!], 1).darkS).toBeCloseTo(80 * 60, 6);
  });

  it('one charger takes one pack at a time', () => {
    const blocks = [block('a', 190, 'show', swap), block('s', 200, 'still', charger)];
    const { charges } = day(blocks, 3);
    for (let i = 1; i < charges.length; i++)
      expect(charges[i]!.startS).toBeGreaterThanOrEqual(charges[i - 1]!.endS - 1e-6);
  });

  it('a pack in use is never on the charger while it powers anything', () => {
    const blocks = [block('a', 50, 'show', charger), block('b', 50, 'show', charger)];
    expect(day(blocks, 1).charges).toEqual([]);
  });
});

describe('the time on a charger', () => {
  it('is an hour at 1C from a fifth to full: full current to four fifths, half of it beyond', () => {
    expect(chargeToFullS(0.2, 1)).toBeCloseTo(3600, 9);
    expect(chargeToFullS(0.2, 2)).toBeCloseTo(1800, 9);
    expect(chargeToFullS(1, 1)).toBe(0);
  });

  it('agrees with the charge that is reached in it', () => {
    for (const from of [0, 0.3, 0.79, 0.9]) {
      const fullS = chargeToFullS(from, 0.7);
      expect(socAfterCharge(from, fullS, 0.7)).toBeCloseTo(1, 12);
      expect(socAfterCharge(from, 2 * fullS, 0.7)).toBe(1);
      const half = socAfterCharge(from, fullS / 2, 0.7);
      expect(socAfterCharge(half, fullS / 2, 0.7)).toBeCloseTo(1, 12);
    }
  });
});
