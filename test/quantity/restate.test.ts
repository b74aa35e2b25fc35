import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metricDisplay, usDisplay } from '../../src/quantity/display-units.js';
import { formatValue } from '../../src/quantity/format.js';
import { restater } from '../../src/quantity/restate.js';

const us = restater(usDisplay);

describe('a sentence in US customary units', () => {
  it.each([
    [
      'Meets the stop at 4 m/s with 1.27 J, about 255 N.',
      'Meets the stop at 13 ft/s with 1.27 J, about 57.3 lbf.',
    ],
    ['weighs 270 g more', 'weighs 9.52 oz more'],
    ['a body of 70 kg', 'a body of 154 lb'],
    ['stall 44.1 kg·cm instead of 80 kg·cm, 8.83 N·m', 'stall 612 oz·in instead of 1111 oz·in, 1250 oz·in'],
    ['4–30 mm, 265 mm (255–275), 54 × 20 × 47 mm', '0.16–1.2 in, 10.4 in (10–10.8), 2.1 × 0.79 × 1.9 in'],
    ['a spring of 68.2 N/m', 'a spring of 0.389 lbf/in'],
    ['settles at 71 °C; -5 °C outside', 'settles at 160 °F; 23 °F outside'],
    ['±10 K, 15 K warmer', '±18 °F, 27 °F warmer'],
    ['it lies at −40 mm', 'it lies at −1.6 in'],
  ])('%s', (metric, customary) => {
    expect(us(metric)).toBe(customary);
  });

  it('keeps what is electrical, pure, in time or in degrees of an angle, and what is no figure', () => {
    for (const text of [
      '1.2 A at 7.4 V for 16 min',
      '3 of 12 N',
      'M3 m',
      '17.6° and 56 deg',
      '2,048 draws',
      'A4 g4',
    ]) {
      expect(us(text)).toBe(text === '3 of 12 N' ? '3 of 2.7 lbf' : text);
    }
  });

  it('keeps the words of the user, and restates what stands beside them', () => {
    const say = restater(usDisplay, ['Servo 25 kg·cm (new)', 'Servo']);
    expect(say('Servo 25 kg·cm (new) weighs 100 g')).toBe('Servo 25 kg·cm (new) weighs 3.53 oz');
  });

  it('stays as it is in the units it is written in', () => {
    const sentence = 'Meets the stop at 4 m/s, about 255 N, with 100 g; 71 °C.';
    expect(restater(metricDisplay)(sentence)).toBe(sentence);
  });

  it('never moves a figure by more than the digits that are written', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 900, noNaN: true }), (forceN) => {
        const customary = Number.parseFloat(us(formatValue(forceN, 'N'))) * 4.4482216;
        expect(Math.abs(customary / forceN - 1)).toBeLessThan(0.06);
      }),
    );
  });
});
