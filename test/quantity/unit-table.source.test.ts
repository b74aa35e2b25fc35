import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { dimensions } from '../../src/quantity/dimension.js';
import { unitOf, units } from '../../src/quantity/unit-table.js';

// Exact definitions: NIST Special Publication 811 (2008), appendix B: standard gravity 9.80665 m/s², inch 0.0254 m,
// pound 0.45359237 kg, ounce = pound / 16. Products of them are typed here as NIST SP 811 prints them, or worked out
// by hand from those four numbers.
const exact: [dimension: Dimension, unit: string, si: number][] = [
  ['force', 'kgf', 9.80665],
  ['force', 'lbf', 4.4482216152605],
  ['force', 'ozf', 0.278013850953781],
  ['torque', 'kg·cm', 0.0980665],
  ['torque', 'oz·in', 0.007061551814226044],
  ['torque', 'lb·in', 0.1129848290276167],
  ['torque', 'lb·ft', 1.3558179483314],
  ['torque', 'g·cm', 0.0000980665],
  ['torque', 'mN·m', 0.001],
  ['mass', 'oz', 0.028349523125],
  ['mass', 'lb', 0.45359237],
  ['length', 'in', 0.0254],
  ['length', 'ft', 0.3048],
  ['charge', 'mAh', 3.6],
  ['charge', 'Ah', 3600],
  ['energy', 'Wh', 3600],
  ['angular-speed', 'rpm', 0.10471975511965977],
  ['angular-speed', 'deg/s', 0.017453292519943295],
  ['speed', 'in/s', 0.0254],
  ['speed', 'km/h', 0.2777777777777778],
  ['linear-stiffness', 'lbf/in', 175.12683524647636],
  ['inertia', 'g·cm²', 1e-7],
  ['area', 'in²', 0.00064516],
];

describe('unit factors follow from exact definitions', () => {
  it.each(exact)('%s: 1 %s', (dimension, symbol, si) => {
    const unit = unitOf(symbol, dimension);
    expect(unit.toSi(1) / si).toBeCloseTo(1, 13);
    expect(unit.fromSi(unit.toSi(12.5))).toBeCloseTo(12.5, 12);
  });

  // Values of a project check list, exact definitions of NIST SP 811.
  it('prints the three torque units of hobby listings as published', () => {
    expect(unitOf('kgf·cm', 'torque').toSi(1)).toBe(0.0980665);
    expect(unitOf('ozf·in', 'torque').toSi(1)).toBeCloseTo(0.00706155181, 11);
    expect(unitOf('lbf·in', 'torque').toSi(1)).toBeCloseTo(0.112984829, 9);
  });

  it('turns seconds for a stretch into a speed, and back', () => {
    const unit = unitOf('s/60deg', 'angular-speed');
    expect(unit.toSi(0.2)).toBeCloseTo(Math.PI / 3 / 0.2, 14);
    expect(unit.fromSi(unit.toSi(0.17))).toBeCloseTo(0.17, 14);
  });

  // Celsius and Fahrenheit zeros: NIST SP 811, appendix B.
  it('knows the zeros of temperature scales', () => {
    expect(unitOf('°C', 'temperature').toSi(25)).toBe(298.15);
    expect(unitOf('°F', 'temperature').toSi(212)).toBeCloseTo(373.15, 10);
    expect(unitOf('°F', 'temperature').fromSi(273.15)).toBeCloseTo(32, 10);
  });

  // ASTM B258, from memory: 36 AWG is 0.005 in, 0000 AWG 0.46 in, 39 steps between; 22 AWG is 0.6438 mm.
  it('knows wire gauges', () => {
    const diameterMm = (gauge: number) =>
      Math.sqrt((4 * unitOf('AWG', 'wire-size').toSi(gauge)) / Math.PI) * 1000;
    expect(diameterMm(36)).toBeCloseTo(0.127, 10);
    expect(diameterMm(22)).toBeCloseTo(0.6438, 4);
    expect(diameterMm(-3)).toBeCloseTo(11.684, 10);
    expect(unitOf('AWG', 'wire-size').fromSi(unitOf('AWG', 'wire-size').toSi(18))).toBeCloseTo(18, 10);
  });
});

describe('the unit table is whole', () => {
  it('has the likeliest units of every dimension', () => {
    for (const [dimension, { likelyUnits }] of Object.entries(dimensions)) {
      for (const symbol of likelyUnits) expect(unitOf(symbol, dimension as Dimension).symbol).toBe(symbol);
    }
  });

  it('reads every spelling as its own unit', () => {
    for (const unit of units) {
      for (const spelling of unit.spellings) {
        expect(unitOf(spelling, unit.dimension).toSi(3), `${spelling} of ${unit.dimension}`).toBe(
          unit.toSi(3),
        );
      }
    }
  });

  it('knows more than a hundred spellings of mechanical units', () => {
    const mechanical = ['torque', 'force', 'mass', 'length', 'speed', 'angular-speed'];
    const spellings = units
      .filter(({ dimension }) => mechanical.includes(dimension))
      .flatMap((unit) => unit.spellings);
    expect(new Set(spellings).size).toBeGreaterThan(100);
  });

  it('states slopes that agree with small steps', () => {
    for (const unit of units) {
      const step = (unit.toSi(2 + 1e-6) - unit.toSi(2 - 1e-6)) / 2e-6;
      expect(Math.abs(step) / unit.slope(2), unit.symbol).toBeCloseTo(1, 5);
    }
  });
});
