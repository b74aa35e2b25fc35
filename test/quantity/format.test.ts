import { describe, expect, it } from 'vitest';
import { metricDisplay } from '../../src/quantity/display-units.js';
import {
  formatNumber,
  formatQuantity,
  formatRange,
  formatValue,
  formatWithSpread,
} from '../../src/quantity/format.js';
import { unitOf } from '../../src/quantity/unit-table.js';

describe('a value is written for a person', () => {
  it.each([
    [0, '0'],
    [2.4516625, '2.45'],
    [63, '63'],
    [12345.6, '12346'],
    [0.00012345, '0.000123'],
    [-0.0000001, '-0.0000001'],
    [1.9999, '2'],
    [999.96, '1000'],
    [Number.NaN, '–'],
    [Number.POSITIVE_INFINITY, '–'],
  ])('%d is %s', (value, text) => expect(formatNumber(value)).toBe(text));

  it('in a unit that is asked for', () => {
    expect(formatValue(63 * 60, 'min')).toBe('63 min');
    expect(formatValue(2.4516625, 'N·m')).toBe('2.45 N·m');
    expect(formatValue(308.15, '°C')).toBe('35 °C');
    expect(formatValue(0.2, '%')).toBe('20 %');
    expect(formatValue(Math.PI / 3 / 0.2, 's/60deg', 2)).toBe('0.2 s/60deg');
    expect(formatValue(Number.NaN, 'A')).toBe('–');
  });

  it.each([
    [0.45, 'current', '450 mA'],
    [1.25, 'current', '1.25 A'],
    [0.42, 'mass', '420 g'],
    [1.2, 'mass', '1.2 kg'],
    [3780, 'time', '63 min'],
    [45, 'time', '45 s'],
    [0.02, 'time', '20 ms'],
    [7920, 'charge', '2200 mAh'],
    [298.15, 'temperature', '25 °C'],
    [0.7, 'length', '700 mm'],
    [0, 'mass', '0 g'],
  ] as const)('%d of %s is %s in the unit of its size', (si, dimension, text) => {
    expect(formatQuantity(si, dimension)).toBe(text);
  });

  it('with its range in the same unit', () => {
    expect(
      formatWithSpread(0.01, { shape: 'triangular', low: 0.004, mode: 0.01, high: 0.03 }, 'current'),
    ).toBe('10 mA (4–30)');
    expect(formatWithSpread(0.42, { shape: 'normal', halfWidth: 0.02 }, 'mass')).toBe('420 g (400–440)');
    expect(formatWithSpread(0.42, null, 'mass')).toBe('420 g');
    expect(formatRange(0.004, 0.03, 'current')).toBe('4–30 mA');
    expect(formatRange(-0.5, 0.5, 'angle')).toBe('-29 to 29 deg');
  });

  it('in units that somebody else prefers', () => {
    const inches = {
      ...metricDisplay,
      length: [{ unit: 'in', from: 0 }],
      torque: [{ unit: 'oz·in', from: 0 }],
    };
    expect(formatQuantity(0.254, 'length', inches)).toBe('10 in');
    expect(formatQuantity(0.7061551814226044, 'torque', inches)).toBe('100 oz·in');
  });

  it('always in a unit that the table has', () => {
    for (const [dimension, ladder] of Object.entries(metricDisplay))
      for (const { unit } of ladder) expect(unitOf(unit, dimension as never).symbol).toBe(unit);
  });
});
