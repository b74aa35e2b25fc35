import { describe, expect, it } from 'vitest';
import { busVoltageV, openCircuitVoltageV, resistanceMultiplier } from '../../src/physics/cell.js';
import { type CellChemistryId, openCircuitVoltagesV } from '../../src/physics/cell-tables.js';
import { solveElsewhere } from './second-opinion.js';

interface Run {
  chemistry: CellChemistryId;
  seriesCount: number;
  capacityC: number;
  r0Ohm: number;
  r1Ohm: number;
  relaxationS: number;
  leadsOhm: number;
  powerW: number;
  currentA: number;
  stopV: number;
}

/** Plays a pack from full at one constant load until its voltage reaches the stop; time in s. */
function runDownS(run: Run): number {
  const table = openCircuitVoltagesV[run.chemistry];
  const voltageV = (soc: number, slowV: number) => {
    const emfV = run.seriesCount * (openCircuitVoltageV(table, soc) - slowV);
    const ohm = run.seriesCount * run.r0Ohm * resistanceMultiplier(soc) + run.leadsOhm;
    return busVoltageV(emfV, ohm, run.powerW, run.currentA);
  };
  const slopes = (_: number, [soc, slowV]: number[]) => {
    const amperes = run.currentA + run.powerW / voltageV(soc!, slowV!);
    return [
      -amperes / run.capacityC,
      (amperes * run.r1Ohm * resistanceMultiplier(soc!) - slowV!) / run.relaxationS,
    ];
  };
  let state = [1, 0];
  let timeS = 0;
  let before = voltageV(1, 0);
  for (;;) {
    state = solveElsewhere(slopes, state, 1);
    timeS += 1;
    const now = voltageV(state[0]!, state[1]!);
    if (now <= run.stopV) return timeS - (run.stopV - now) / (before - now);
    before = now;
  }
}

describe('packs at one constant load (run-downs by two independent high-order ODE solvers; within 0.1 %)', () => {
  it('2S cylindrical cells of 2.6 Ah at 2.6 A behind 15 mΩ reach 3.0 V per cell after 3275.098 s', () => {
    const timeS = runDownS({
      chemistry: 'li-ion',
      seriesCount: 2,
      capacityC: 2.6 * 3600,
      r0Ohm: 0.035,
      r1Ohm: 0.02,
      relaxationS: 60,
      leadsOhm: 0.015,
      powerW: 0,
      currentA: 2.6,
      stopV: 6,
    });
    expect(timeS / 3275.098).toBeCloseTo(1, 5);
  });

  it('2S lithium-polymer cells of 1.5 Ah with 12 W out of an 88 % converter reach 3.3 V per cell after 2757.404 s', () => {
    const timeS = runDownS({
      chemistry: 'lipo',
      seriesCount: 2,
      capacityC: 1.5 * 3600,
      r0Ohm: 0.045,
      r1Ohm: 0.03,
      relaxationS: 60,
      leadsOhm: 0.02,
      powerW: 12 / 0.88,
      currentA: 0,
      stopV: 6.6,
    });
    expect(timeS / 2757.404).toBeCloseTo(1, 5);
  });
});

describe('open-circuit voltages at half charge', () => {
  it.each([
    ['lipo', 3.8054, 'Ai et al. 2020, J. Electrochem. Soc. 167 013512'],
    ['nmc-pouch', 3.6814, 'Reniers, Mulder, Howey 2019, J. Electrochem. Soc. 166 A3189'],
    ['li-ion', 3.6869, 'openly licensed rate tests of a 5 Ah 21700 cell'],
    ['li-ion-power', 3.6869, 'as li-ion'],
    ['lifepo4', 3.2774, 'Kawakita de Souza 2021, Mendeley Data 10.17632/p8kf893yv3.1'],
    ['nimh', 1.29, 'a vehicle module table, weak'],
  ] as const)('of %s is %s V (%s)', (id, voltageV, _) => {
    expect(openCircuitVoltageV(openCircuitVoltagesV[id], 0.5)).toBeCloseTo(voltageV, 12);
  });
});
