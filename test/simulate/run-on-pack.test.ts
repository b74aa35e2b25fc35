import { describe, expect, it } from 'vitest';
import { openCircuitVoltagesV } from '../../src/physics/cell-tables.js';
import { runOnPack } from '../../src/simulate/run-on-pack.js';
import { barePack, samplesOf } from './segments.js';

const hourS = 3600;

/** A run of about so many hours: a full ampere-hour pack that is drained evenly, ten minutes to the loop. */
function runOf(hours: number) {
  const pack = barePack({
    openCircuitVoltagesV: openCircuitVoltagesV.lipo,
    seriesCount: 2,
    cellChargeC: hourS,
    relaxationTimeS: 0,
    reserveFraction: 0,
  });
  return runOnPack(pack, samplesOf([]), samplesOf([{ durationS: 600, currentA: 1 / hours }]));
}

describe('a run on one pack', () => {
  it('is stepped, and so has a curve to draw, as long as 400,000 steps of 2 s are enough for it: 222 h', () => {
    for (const hours of [10, 60, 200])
      expect(runOf(hours).series.timesS.length, `${hours} h`).toBeGreaterThan(50);
    expect(runOf(230).series.timesS).toEqual([]);
  });

  it('that ends in its first loop ends there by either solver, however long its lead-in was', () => {
    // Charge for a lead-in of 1000 s at 0.2 A and for half a loop of 100 s at 30 A.
    const pack = barePack({
      openCircuitVoltagesV: openCircuitVoltagesV.lipo,
      ...{ seriesCount: 2, relaxationTimeS: 0, reserveFraction: 0, cellChargeC: 1000 * 0.2 + 50 * 30 },
    });
    const leadIn = samplesOf([{ durationS: 1000, currentA: 0.2 }]);
    const loop = samplesOf([{ durationS: 100, currentA: 30 }]);
    for (const exactly of [true, false]) {
      expect(runOnPack(pack, leadIn, loop, exactly).runDown.runtimeS).toBeCloseTo(1050, 3);
    }
  });

  it('lasts as long by either solver: the charge over the current', () => {
    for (const hours of [200, 230]) expect(runOf(hours).runDown.runtimeS / hourS / hours).toBeCloseTo(1, 2);
  });
});
