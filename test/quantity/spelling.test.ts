import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { findUnits } from '../../src/quantity/unit-table.js';

const spellings: Partial<Record<Dimension, Record<string, string>>> = {
  torque: {
    kg·cm: 'kg·cm',
    'kg-cm': 'kg·cm',
    kgcm: 'kg·cm',
    kgf·cm: 'kg·cm',
    'kgf.cm': 'kg·cm',
    Kg·cm: 'kg·cm',
    'KG.CM': 'kg·cm',
    'kg cm': 'kg·cm',
    'kg*cm': 'kg·cm',
    'kgf x cm': 'kg·cm',
    'kg×cm': 'kg·cm',
    'kg⋅cm': 'kg·cm',
    'kg•cm': 'kg·cm',
    kp·cm: 'kg·cm',
    N·m: 'N·m',
    Nm: 'N·m',
    'N.m': 'N·m',
    NM: 'N·m',
    'oz-in.': 'oz·in',
    N·cm: 'N·cm',
    Ncm: 'N·cm',
    mN·m: 'mN·m',
    mNm: 'mN·m',
    'oz-in': 'oz·in',
    ozf·in: 'oz·in',
    'oz.in': 'oz·in',
    'in-oz': 'oz·in',
    oz·inch: 'oz·in',
    'lb-in': 'lb·in',
    'in-lb': 'lb·in',
    lb·ft: 'lb·ft',
    'ft-lbs': 'lb·ft',
    'lbf-ft': 'lb·ft',
  },
  'angular-speed': {
    's/60deg': 's/60deg',
    'sec/60°': 's/60deg',
    's/60°': 's/60deg',
    'sec/60deg': 's/60deg',
    'sec./60°': 's/60deg',
    's/60 deg': 's/60deg',
    'sec / 60 degrees': 's/60deg',
    's/60º': 's/60deg',
    'S/60°': 's/60deg',
    'deg/s': 'deg/s',
    '°/s': 'deg/s',
    rpm: 'rpm',
    RPM: 'rpm',
    'rev/min': 'rpm',
    'r/min': 'rpm',
    'rad/s': 'rad/s',
  },
  force: { N: 'N', kgf: 'kgf', lbf: 'lbf' },
  speed: {
    'mm/s': 'mm/s',
    'in/s': 'in/s',
    'mm/sec': 'mm/s',
    'inch/s': 'in/s',
    '"/s': 'in/s',
    'mm per s': 'mm/s',
  },
  mass: { g: 'g', kg: 'kg', oz: 'oz', lb: 'lb', lbs: 'lb', grams: 'g' },
  length: { mm: 'mm', cm: 'cm', in: 'in', m: 'm', '"': 'in', MM: 'mm' },
  current: { A: 'A', mA: 'mA', amps: 'A' },
  voltage: { V: 'V', volts: 'V', VDC: 'V' },
  charge: { Ah: 'Ah', mAh: 'mAh', MAH: 'mAh', mA·h: 'mAh' },
  power: { W: 'W', mW: 'mW' },
  energy: { Wh: 'Wh' },
  resistance: { Ω: 'Ω', '\u2126': 'Ω', mΩ: 'mΩ', ohm: 'Ω', mohm: 'mΩ', 'm\u2126': 'mΩ' },
  angle: { '°': 'deg', deg: 'deg', rad: 'rad', degrees: 'deg' },
  time: { min: 'min', s: 's', ms: 'ms', h: 'h', sec: 's', '\u00b5s': 'µs', '\u03bcs': 'µs' },
  temperature: { '°C': '°C', '\u2103': '°C', degC: '°C' },
  'thermal-resistance': { 'K/W': 'K/W', '°C/W': 'K/W' },
  'heat-capacity': { 'J/K': 'J/K' },
  frequency: { Hz: 'Hz', kHz: 'kHz', hz: 'Hz', KHz: 'kHz' },
  ratio: { '%': '%' },
  area: { 'm²': 'm²', m2: 'm²', 'm^2': 'm²', 'cm²': 'cm²' },
  inertia: { 'kg·m²': 'kg·m²', 'kg m2': 'kg·m²', 'g·cm^2': 'g·cm²' },
};

const table = Object.entries(spellings).flatMap(([dimension, pairs]) =>
  Object.entries(pairs).map(([written, symbol]) => ({ dimension, written, symbol })),
);

describe('units are read in every spelling that listings use', () => {
  it.each(table)('$written is $symbol', ({ dimension, written, symbol }) => {
    const found = findUnits(written).find((unit) => unit.dimension === dimension);
    expect(found?.symbol).toBe(symbol);
    expect(found?.slipFor).toBeNull();
  });

  it.each(['kg/cm', 'kgf/cm', 'oz/in', 'lb/in'])('%s is a slip for a torque', (written) => {
    const found = findUnits(written).find((unit) => unit.dimension === 'torque');
    expect(found?.slipFor).toBe(found?.symbol);
  });

  it.each(['', 'furlong', 'kg·kg', 'mm mm', 'constructor', '__proto__', 'toString'])(
    '“%s” is no length',
    (written) => {
      expect(findUnits(written).filter((unit) => unit.dimension === 'length')).toEqual([]);
    },
  );
});
