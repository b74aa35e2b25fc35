import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { type NumberStyle, plainStyle } from '../../src/quantity/number-text.js';
import { unitOf, units } from '../../src/quantity/unit-table.js';
import { readValue } from '../../src/quantity/value.js';

const commaStyle: NumberStyle = { decimalComma: true, mark: ',' };

function read(text: string, dimension: Dimension, bare: string | null = null, style = plainStyle) {
  const bareUnit = bare === null ? null : unitOf(bare, dimension);
  const reading = readValue(text, { dimension, bareUnit, style });
  if (!reading.ok) throw new Error(reading.trouble.code);
  return reading.value;
}

const troubleOf = (text: string, dimension: Dimension, style = plainStyle) => {
  const reading = readValue(text, { dimension, bareUnit: null, style });
  return reading.ok ? null : reading.trouble;
};

describe('a value', () => {
  it('is a number with a unit', () => {
    expect(read('25 kg·cm', 'torque')).toEqual({ nominal: 2.4516625, spread: null });
    expect(read('420 g', 'mass').nominal).toBeCloseTo(0.42, 15);
    expect(read('.5A', 'current').nominal).toBe(0.5);
    expect(read('1.2e3 mA', 'current').nominal).toBeCloseTo(1.2, 15);
  });

  it('may have any kind of minus and plus', () => {
    for (const text of ['-20 deg', '−20°', '–20 deg', '－20°'])
      expect(read(text, 'angle').nominal).toBeCloseTo(-Math.PI / 9, 15);
    expect(read('+20 deg', 'angle').nominal).toBeCloseTo(Math.PI / 9, 15);
  });

  it('groups thousands by spaces and apostrophes, of any width', () => {
    for (const text of ['1 200 g', '1\u00a0200 g', '1\u2009200\u202fg', "1'200 g"])
      expect(read(text, 'mass').nominal).toBe(1.2);
    expect(read('12 345 678 mAh', 'charge').nominal).toBeCloseTo(12345678 * 3.6, 6);
  });

  it('takes its bare unit where there is one', () => {
    expect(read('25', 'angle', 'deg').nominal).toBeCloseTo((25 * Math.PI) / 180, 15);
    expect(read('25 ±2', 'angle', 'deg').spread).toEqual({ shape: 'normal', halfWidth: (2 * Math.PI) / 180 });
    expect(read('0.3 rad', 'angle', 'deg').nominal).toBe(0.3);
  });

  it('reads decimal commas where they are accepted', () => {
    expect(read('0,17 s/60deg', 'angular-speed', null, commaStyle).nominal).toBeCloseTo(
      Math.PI / 3 / 0.17,
      12,
    );
    expect(read('1.234,5 g', 'mass', null, commaStyle).nominal).toBeCloseTo(1.2345, 12);
    expect(read('1,234 g', 'mass', null, commaStyle).nominal).toBeCloseTo(0.001234, 15);
    expect(read('0,3..0,5 A', 'current', null, commaStyle).nominal).toBeCloseTo(0.4, 15);
    expect(read('1,234.5 g', 'mass').nominal).toBeCloseTo(1.2345, 12);
  });

  it('says what a unit of another dimension is and what is likely meant', () => {
    expect(troubleOf('35 oz', 'torque')?.message).toBe('“35 oz” is a mass, a torque is expected: oz·in?');
    expect(troubleOf('450 mAh', 'current')?.message).toBe(
      '“450 mAh” is a charge, a current is expected: mA?',
    );
  });

  it('never reads what is no number', () => {
    for (const text of [
      '',
      'abc',
      '-',
      '?',
      'n/a',
      '..',
      '±',
      '1..',
      '..2 g',
      '5 g g',
      '1.2.3 g',
      '1,2,3 g',
      'NaN g',
      'Infinity g',
      '0x10 g',
      '５²g',
    ])
      expect(troubleOf(text, 'mass'), text).not.toBeNull();
  });
});

describe('the spread of a value', () => {
  it('is normal for ±, with d or p per cent', () => {
    expect(read('1.2 A ±15%', 'current').spread).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(0.18, 12),
    });
    for (const text of ['420 g +/- 20 g', '420 g ±20 g', '420 ± 20 g', '420 g +-20', '420 g ± 0.02 kg'])
      expect(read(text, 'mass')).toEqual({
        nominal: expect.closeTo(0.42, 12),
        spread: { shape: 'normal', halfWidth: expect.closeTo(0.02, 12) },
      });
  });

  it('is uniform between two ends, its nominal the median: the geometric mean when the ratio is 3 or more', () => {
    expect(read('0.3..0.5 A', 'current')).toEqual({
      nominal: 0.4,
      spread: { shape: 'uniform', low: 0.3, high: 0.5 },
    });
    expect(read('1..4 A', 'current').nominal).toBeCloseTo(2, 12);
    expect(read('1..3 A', 'current').nominal).toBeCloseTo(Math.sqrt(3), 12);
    expect(read('1..2.99 A', 'current').nominal).toBeCloseTo(1.995, 12);
    expect(read('-30..60 deg', 'angle').nominal).toBeCloseTo(Math.PI / 12, 12);
    expect(read('0..4 A', 'current').nominal).toBe(2);
  });

  it('is triangular with a likeliest value, which is the nominal', () => {
    expect(read('0.3..0.4..0.5 A', 'current')).toEqual({
      nominal: 0.4,
      spread: { shape: 'triangular', low: 0.3, mode: 0.4, high: 0.5 },
    });
    expect(read('0.3…0.4…0.5 A', 'current').nominal).toBe(0.4);
  });

  it('is exact when it has no width', () => {
    expect(read('5 A ±0', 'current').spread).toEqual({ shape: 'exact' });
    expect(read('5..5 A', 'current')).toEqual({ nominal: 5, spread: { shape: 'exact' } });
  });

  it('may have a unit at each end', () => {
    expect(read('300 mA..0.5 A', 'current').spread).toEqual({ shape: 'uniform', low: 0.3, high: 0.5 });
  });

  it('is turned round where a unit runs the other way', () => {
    const { nominal, spread } = read('0.15..0.20 s/60deg', 'angular-speed');
    const [slow, fast] = [Math.PI / 3 / 0.2, Math.PI / 3 / 0.15];
    expect(spread).toEqual({
      shape: 'uniform',
      low: expect.closeTo(slow, 12),
      high: expect.closeTo(fast, 12),
    });
    expect(nominal).toBeCloseTo((slow + fast) / 2, 12);
    expect(read('0.2 s/60deg ±10%', 'angular-speed').spread).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(slow / 10, 12),
    });
  });

  it('is a share of the degrees written, not of the kelvins', () => {
    expect(read('40 °C ±5%', 'temperature').spread).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(2, 12),
    });
    expect(read('104 °F ±9 °F', 'temperature').spread).toEqual({
      shape: 'normal',
      halfWidth: expect.closeTo(5, 12),
    });
  });
});

describe('writing and reading again', () => {
  const unit = fc.constantFrom(...units.filter(({ symbol, slipFor }) => symbol !== '' && slipFor === null));
  const number = fc.double({ min: 0.001, max: 1e6, noNaN: true });

  it('gives every number back in every unit', () => {
    fc.assert(
      fc.property(unit, number, ({ symbol, dimension, toSi }, value) => {
        expect(read(`${value} ${symbol}`, dimension).nominal).toBe(toSi(value));
      }),
    );
  });

  it('gives every tolerance and range back', () => {
    fc.assert(
      fc.property(unit, number, number, number, (one, a, b, c) => {
        const [low, mode, high] = [a, b, c].sort((x, y) => x - y) as [number, number, number];
        fc.pre(low < mode && mode < high && one.symbol !== 'AWG');
        const triangle = read(`${low}..${mode}..${high} ${one.symbol}`, one.dimension);
        expect(triangle.nominal).toBe(one.toSi(mode));
        const ends = [one.toSi(low), one.toSi(high)].sort((x, y) => x - y);
        expect(triangle.spread).toEqual({
          shape: 'triangular',
          low: ends[0],
          mode: one.toSi(mode),
          high: ends[1],
        });
        const tolerance = read(`${high} ${one.symbol} ±${low} ${one.symbol}`, one.dimension).spread;
        expect(tolerance?.shape).toBe('normal');
      }),
    );
  });

  it('never throws and never gives a number that is not finite, whatever is written', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        const reading = readValue(text, {
          dimension: 'mass',
          bareUnit: unitOf('g', 'mass'),
          style: plainStyle,
        });
        if (reading.ok) expect(Number.isFinite(reading.value.nominal)).toBe(true);
      }),
      { numRuns: 2000 },
    );
    const pieces = fc.constantFrom(
      '1',
      '2.5',
      ' ',
      '..',
      '±',
      '+/-',
      '%',
      'g',
      'kg',
      '-',
      ',',
      '.',
      'e',
      '/',
      '·',
      '\u00a0',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 9 }), (parts) => {
        const reading = readValue(parts.join(''), { dimension: 'mass', bareUnit: null, style: commaStyle });
        if (reading.ok) expect(Number.isFinite(reading.value.nominal)).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });
});
