import { type Dimension, dimensions } from './dimension.js';
import type { Unit } from './unit.js';

/** What is likely meant by a unit where another dimension is expected. */
const meant: Partial<Record<Dimension, Record<string, string>>> = {
  torque: {
    kg: 'kg·cm',
    g: 'g·cm',
    oz: 'oz·in',
    lb: 'lb·in',
    N: 'N·m',
    kgf: 'kg·cm',
    lbf: 'lb·in',
    ozf: 'oz·in',
  },
  force: { kg: 'kgf', g: 'gf', oz: 'ozf', lb: 'lbf', kg·cm: 'kgf', oz·in: 'ozf', lb·in: 'lbf' },
  mass: { kgf: 'kg', gf: 'g', lbf: 'lb', ozf: 'oz', N: 'kg' },
  current: { mAh: 'mA', Ah: 'A', mW: 'mA' },
  charge: { mA: 'mAh', A: 'Ah', Wh: 'Ah' },
  power: { Wh: 'W', mWh: 'mW' },
  energy: { W: 'Wh' },
  speed: { mm: 'mm/s', cm: 'cm/s', m: 'm/s', in: 'in/s' },
  'angular-speed': { s: 's/60deg', deg: 'deg/s', rad: 'rad/s', Hz: 'rev/s' },
  area: { mm: 'mm²', cm: 'cm²', m: 'm²', in: 'in²' },
  inertia: { kg·cm: 'kg·cm²', kg·m: 'kg·m²', g·cm: 'g·cm²' },
  'linear-stiffness': { N: 'N/mm' },
  'rotary-stiffness': { N·m: 'N·m/rad', kg·cm: 'kg·cm/deg' },
  temperature: { deg: '°C' },
  angle: { '°C': 'deg' },
  'thermal-resistance': { K: 'K/W' },
};

/**
 * The unit a person likely meant who wrote a unit of another dimension; empty when the value takes no unit.
 */
export function likelyUnit(given: Unit, expected: Dimension): string {
  return meant[expected]?.[given.symbol] ?? dimensions[expected].likelyUnits[0] ?? '';
}
