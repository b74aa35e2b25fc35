import type { Dimension } from './dimension.js';
import { footM, poundKg } from './exact.js';

/** A unit to show from a size on; the first of a ladder has no lower end. */
export interface DisplayStep {
  unit: string;
  /** Smallest |SI value| shown in this unit. */
  from: number;
}

/** The units in which a person wants to read each dimension, smallest first. */
export type DisplayUnits = Record<Dimension, readonly DisplayStep[]>;

/** A ladder of one or more units: `steps('g', [1, 'kg'])`. */
function steps(first: string, ...more: readonly (readonly [number, string])[]): DisplayStep[] {
  return [{ unit: first, from: 0 }, ...more.map(([from, unit]) => ({ from, unit }))];
}

/** Metric units, as most makers of moving features write them. */
export const metricDisplay: DisplayUnits = {
  length: steps('mm', [1, 'm']),
  area: steps('mm²', [1e-4, 'cm²'], [0.1, 'm²']),
  'wire-size': steps('mm²'),
  mass: steps('g', [1, 'kg']),
  time: steps('ms', [0.1, 's'], [120, 'min'], [36000, 'h']),
  angle: steps('deg'),
  speed: steps('mm/s', [1, 'm/s']),
  'angular-speed': steps('deg/s'),
  force: steps('N'),
  torque: steps('N·m'),
  inertia: steps('kg·cm²', [0.01, 'kg·m²']),
  'linear-stiffness': steps('N/m', [1000, 'N/mm']),
  'rotary-stiffness': steps('N·m/rad'),
  current: steps('mA', [1, 'A']),
  voltage: steps('mV', [0.1, 'V']),
  resistance: steps('mΩ', [1, 'Ω']),
  charge: steps('mAh', [36000, 'Ah']),
  power: steps('mW', [1, 'W']),
  energy: steps('mJ', [0.1, 'J'], [3600, 'Wh']),
  temperature: steps('°C'),
  'thermal-resistance': steps('K/W'),
  'heat-capacity': steps('J/K'),
  'molar-energy': steps('kJ/mol'),
  'resistance-charge': steps('mΩ·Ah'),
  'per-kelvin': steps('%/K'),
  frequency: steps('Hz', [1000, 'kHz']),
  'sound-level': steps('dB'),
  'charge-rate': steps('C'),
  ratio: steps(''),
  count: steps(''),
  money: steps(''),
};

/** US customary units for what is mechanical or warm; what is electrical is the same everywhere. */
export const usDisplay: DisplayUnits = {
  ...metricDisplay,
  length: steps('in', [10 * footM, 'ft']),
  area: steps('in²', [footM * footM, 'ft²']),
  mass: steps('oz', [2 * poundKg, 'lb']),
  speed: steps('in/s', [footM, 'ft/s']),
  force: steps('lbf'),
  torque: steps('oz·in'),
  inertia: steps('oz·in²', [0.01, 'lb·in²']),
  'linear-stiffness': steps('lbf/in'),
  'rotary-stiffness': steps('oz·in/rad'),
  temperature: steps('°F'),
  'thermal-resistance': steps('°F/W'),
  'heat-capacity': steps('J/°F'),
};

/** The systems of units that a person may choose. */
export const displaySystems = { metric: metricDisplay, us: usDisplay };

/** Name of a system of units. */
export type UnitSystem = keyof typeof displaySystems;
