import { describe, expect, it } from 'vitest';
import { openCircuitVoltagesV } from '../../src/physics/cell-tables.js';
import { steppedRunDown } from '../../src/simulate/run-down.js';
import { averagedRunDown } from '../../src/simulate/run-down-averaged.js';
import { barePack, type Segment, samplesOf } from './segments.js';

/*
 * Expected times: a high-order adaptive ODE solver (relative tolerance 1e-9) on the same equations, cross-checked
 * with a second solver to 2e-8. The project only has to land within 0.1 %.
 */
const once = 1_000_000;
const cases: {
  title: string;
  pack: Parameters<typeof barePack>[0];
  segments: Segment[];
  timeS: number;
  endSocPercent: number;
  endRelaxationV?: number;
}[] = [
  {
    title: '3S lithium-polymer pack, 2.2 Ah at 2.2 A, constant 40 mΩ a cell, to 3.3 V a cell',
    pack: {
      openCircuitVoltagesV: openCircuitVoltagesV.lipo,
      seriesCount: 3,
      cellChargeC: 2.2 * 3600,
      // The reference case has no rise of resistance at low charge, as only the leads have here: 3 × 40 mΩ.
      leadOhm: 0.12,
      relaxationTimeS: 0,
      cutOffBusV: 9.9,
    },
    segments: [{ durationS: once, currentA: 2.2 }],
    timeS: 3527.034,
    endSocPercent: 2.026842,
  },
  {
    title: '2S cylindrical pack, 2.6 Ah at 2.6 A with relaxation and 15 mΩ of leads, to 3.0 V a cell',
    pack: {
      openCircuitVoltagesV: openCircuitVoltagesV['li-ion'],
      seriesCount: 2,
      cellChargeC: 2.6 * 3600,
      cellOhm: 0.035,
      relaxingOhm: 0.02,
      leadOhm: 0.015,
      cutOffBusV: 6,
    },
    segments: [{ durationS: once, currentA: 2.6 }],
    timeS: 3275.098,
    endSocPercent: 9.025065,
  },
  {
    title: '2S lithium-polymer pack, 1.5 Ah, feeding 12 W of lights through an 88 % converter',
    pack: {
      openCircuitVoltagesV: openCircuitVoltagesV.lipo,
      seriesCount: 2,
      cellChargeC: 1.5 * 3600,
      cellOhm: 0.045,
      relaxingOhm: 0.03,
      leadOhm: 0.02,
      cutOffBusV: 6.6,
    },
    segments: [{ durationS: once, powerW: 12 / 0.88 }],
    timeS: 2757.404,
    endSocPercent: 5.73383,
  },
  {
    title:
      '3S lithium-polymer pack, 1.3 Ah, 4 s at 8 A and 16 s at 0.5 A repeated, to 3.3 V a cell under load',
    pack: {
      openCircuitVoltagesV: openCircuitVoltagesV.lipo,
      seriesCount: 3,
      cellChargeC: 1.3 * 3600,
      cellOhm: 0.028,
      relaxingOhm: 0.018,
      relaxationTimeS: 30,
      leadOhm: 0.012,
      cutOffBusV: 9.9,
    },
    segments: [
      { durationS: 4, currentA: 8 },
      { durationS: 16, currentA: 0.5 },
    ],
    timeS: 2043.489,
    endSocPercent: 12.22415,
  },
  {
    title: '3S2P cylindrical pack at 5.2 A: the cells as with half the current, the leads drop twice as much',
    pack: {
      openCircuitVoltagesV: openCircuitVoltagesV['li-ion'],
      seriesCount: 3,
      parallelCount: 2,
      cellChargeC: 2.6 * 3600,
      cellOhm: 0.035,
      relaxingOhm: 0.02,
      leadOhm: 0.015,
      cutOffBusV: 9,
    },
    segments: [{ durationS: once, currentA: 5.2 }],
    timeS: 3270.267,
    endSocPercent: 9.159255,
  },
];

describe('a pack run down in time', () => {
  for (const { title, pack, segments, timeS, endSocPercent } of cases) {
    it(`agrees within 0.1 %: ${title}`, () => {
      const run = steppedRunDown(barePack(pack), samplesOf([]), samplesOf(segments));
      expect(run.endReason).toBe('cut-off');
      expect(Math.abs(run.runtimeS / timeS - 1)).toBeLessThan(1e-3);
      expect(run.endSocFraction * 100).toBeCloseTo(endSocPercent, 1);
    });
  }
});

describe('a pack run down over the loop average', () => {
  for (const { title, pack, segments, timeS } of cases) {
    it(`agrees within 0.5 %: ${title}`, () => {
      const run = averagedRunDown(barePack(pack), samplesOf([]), samplesOf(segments));
      expect(run.endReason).toBe('cut-off');
      expect(Math.abs(run.runtimeS / timeS - 1)).toBeLessThan(5e-3);
    });
  }
});
