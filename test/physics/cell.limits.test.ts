import { describe, expect, it } from 'vitest';
import {
  arrheniusRatio,
  busVoltageV,
  coldCapacityRatio,
  openCircuitVoltageV,
  resistanceMultiplier,
} from '../../src/physics/cell.js';
import { cellChemistryIds, openCircuitVoltagesV } from '../../src/physics/cell-tables.js';
import { celsiusK, significant } from './units.js';

describe('lights of 15 W through 0.9 behind 0.12 Ω (closed form)', () => {
  const powerW = 15 / 0.9;
  const currentA = (emfV: number) => powerW / busVoltageV(emfV, 0.12, powerW, 0);

  it('draw 2.341132 A from 7.4 V and 2.952072 A from 6.0 V', () => {
    expect(significant(currentA(7.4), 7)).toBe(2.341132);
    expect(significant(currentA(6), 7)).toBe(2.952072);
  });

  it('collapse at 6.0 V at 75 W from the pack, 67.5 W at the lights', () => {
    expect(busVoltageV(6, 0.12, 74.999, 0)).toBeCloseTo(3, 1);
    expect(busVoltageV(6, 0.12, 67.5 / 0.9 + 0.001, 0)).toBeNaN();
  });
});

describe('the bus voltage', () => {
  it('meets its own equation', () => {
    for (const [emf, ohm, power, current] of [
      [7.4, 0.12, 20, 3],
      [11.1, 0.3, 0, 5],
      [7.4, 0.12, -30, 1],
      [7.4, 0, 40, 8],
    ] as const) {
      const voltage = busVoltageV(emf, ohm, power, current);
      expect(voltage).toBeCloseTo(emf - ohm * (power / voltage + current), 12);
    }
  });

  it('is the source voltage without load', () => {
    expect(busVoltageV(7.4, 0.12, 0, 0)).toBe(7.4);
  });

  it('does not exist when the current alone takes all of the voltage', () => {
    expect(busVoltageV(6, 0.12, 0, 50)).toBeNaN();
    expect(busVoltageV(6, 0.12, 1, 60)).toBeNaN();
  });
});

describe('the open-circuit table', () => {
  const socFractions = [0, 0.02, ...Array.from({ length: 20 }, (_, i) => (i + 1) / 20)];

  it.each(cellChemistryIds)('of %s is met at its knots, straight between them and constant outside', (id) => {
    const table = openCircuitVoltagesV[id];
    expect(table).toHaveLength(socFractions.length);
    socFractions.forEach((soc, i) => {
      expect(openCircuitVoltageV(table, soc)).toBeCloseTo(table[i]!, 12);
      if (i === 0) return;
      const middle = (soc + socFractions[i - 1]!) / 2;
      expect(openCircuitVoltageV(table, middle)).toBeCloseTo((table[i]! + table[i - 1]!) / 2, 12);
    });
    expect(openCircuitVoltageV(table, -0.1)).toBe(table[0]);
    expect(openCircuitVoltageV(table, 1.1)).toBe(table.at(-1));
  });

  it.each(cellChemistryIds)('of %s never falls as the cell is fuller', (id) => {
    const table = openCircuitVoltagesV[id];
    for (let i = 1; i < table.length; i++) expect(table[i]).toBeGreaterThanOrEqual(table[i - 1]!);
  });

  it('reads the same from a typed array', () => {
    const table = Float64Array.from(openCircuitVoltagesV.lipo);
    expect(openCircuitVoltageV(table, 0.333)).toBe(openCircuitVoltageV(openCircuitVoltagesV.lipo, 0.333));
  });
});

describe('the resistance of a cell', () => {
  it('rises as the cell empties, through the figures of its table', () => {
    const table = [
      [1, 1],
      [0.5, 1],
      [0.4, 1.025],
      [0.3, 1.05],
      [0.2, 1.1],
      [0.15, 1.2],
      [0.1, 1.4],
      [0.05, 1.9],
      [0, 2.5],
      [-0.1, 2.5],
    ] as const;
    for (const [soc, ratio] of table) expect(resistanceMultiplier(soc)).toBeCloseTo(ratio, 12);
  });

  it('has no step at any state of charge', () => {
    for (let soc = 0; soc <= 1; soc += 0.001) {
      const change = resistanceMultiplier(soc) - resistanceMultiplier(soc + 1e-9);
      expect(Math.abs(change)).toBeLessThan(1e-7);
    }
  });

  it('is its listed one at 25 °C and about 1.4 times that at 5 °C for 12 kJ/mol', () => {
    expect(arrheniusRatio(12_000, celsiusK(25))).toBe(1);
    // exp(12000 / 8.314462618 × (1/278.15 − 1/298.15))
    expect(significant(arrheniusRatio(12_000, celsiusK(5)), 6)).toBe(1.41633);
  });
});

describe('the capacity of a cold cell', () => {
  it('loses 0.35 % per kelvin below 25 °C and gains nothing above', () => {
    expect(coldCapacityRatio(0.0035, celsiusK(5))).toBeCloseTo(0.93, 12);
    expect(coldCapacityRatio(0.0035, celsiusK(40))).toBe(1);
    expect(coldCapacityRatio(0.02, celsiusK(-40))).toBe(0);
  });
});
