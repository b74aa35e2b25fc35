import { describe, expect, it } from 'vitest';
import { listed } from '../../src/assess/figures.js';
import { brokenLabel, thinned } from '../../src/report/charts/chart-content.js';
import { gain } from '../../src/report/words/bands.js';
import { cleanText, cleanTree } from '../../src/report/words/clean.js';
import {
  current,
  displayReadings,
  duration,
  fixed,
  sentence,
  withReading,
} from '../../src/report/words/figures.js';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('a figure', () => {
  it.each([
    [0.62, '0.62 s'],
    [9.96, '10 s'],
    [45.4, '45 s'],
    [150, '2.5 min'],
    [5760, '96 min'],
    [10920, '182 min'],
    [39900, '11 h 05 min'],
    // The longest run that is followed: it has not ended by then.
    [2592000, 'over 720 h'],
    [null, '–'],
    [Number.NaN, '–'],
  ])('of time %s s reads %s', (value, text) => {
    expect(plain(duration(value))).toBe(text);
  });

  it('of current is in milliamperes below a tenth of an ampere', () => {
    expect([current(0.012), current(0.557), current(0), current(undefined)].map(plain)).toEqual([
      '12 mA',
      '0.557 A',
      '0 A',
      '–',
    ]);
  });

  it('of temperature is in degrees Celsius, with a true minus sign', () => {
    expect(plain(withReading(344.2, displayReadings.metric.temperature))).toBe('71 °C');
    expect(plain(withReading(263.15, displayReadings.metric.temperature))).toBe('−10 °C');
    expect(fixed(-0.2, 0)).toBe('0');
  });

  it('stands in a list with commas and an and', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
    expect([sentence('hold it'), sentence('Done.'), sentence('')]).toEqual(['Hold it.', 'Done.', '']);
  });
});

describe('text from a file', () => {
  it('loses escape sequences, control and direction characters, not its letters', () => {
    expect(cleanText('a\u001b[31mred\u001b]0;title\u0007\u202eb\tc\r\nd\u0000\u200bé 🦢\ufe0f')).toBe(
      'aredb c dé 🦢',
    );
  });

  it('is cleaned in a list that begins with figures too; a list of figures is left as it is', () => {
    const series = [1, null, 2];
    const cleaned = cleanTree({ series, mixed: [1, 'a\u001b[31mb', ['c\u0000']] });
    expect(cleaned).toEqual({ series, mixed: [1, 'ab', ['c']] });
    expect(cleaned.series).toBe(series);
  });

  it('loses halves of characters', () => {
    expect(cleanText('a\ud83eb')).toBe('ab');
  });
});

describe('a series for a chart', () => {
  it('keeps its ends, its highest and its lowest point when thinned', () => {
    const times = Array.from({ length: 5000 }, (_, index) => index);
    const values = times.map((time) => (time === 3333 ? 9 : time === 1234 ? -9 : 0));
    const points = thinned(times, values, 100);
    expect(points.length).toBeLessThan(210);
    expect(points).toContainEqual({ time: 3333, value: 9 });
    expect(points).toContainEqual({ time: 1234, value: -9 });
    expect([points[0]!.time, points.at(-1)!.time]).toEqual([0, 4999]);
  });

  it('takes labels of at most two lines', () => {
    expect(brokenLabel('Screw actuator under the neck', 16)).toBe('Screw actuator\nunder the neck');
    expect(brokenLabel('one two three four five six seven', 9).split('\n')).toHaveLength(2);
  });
});

describe('a gain', () => {
  const band = (p10: number, median: number, p90: number) => ({ p10, median, p90, occursFraction: 1 });

  it.each([
    ['+0.05 (−0.01 to 0.06)', band(-0.01, 0.05, 0.06), 0.03],
    // The sign is that of the figure that stands there, whatever the nominal one is.
    ['−0.03', band(-0.03, -0.03, -0.03), 0.01],
    ['0.00 (−0.01 to 0.01)', band(-0.01, 0.001, 0.01), 0.02],
    ['+0.13', null, 0.13],
    ['0.00', null, 0.001],
    ['–', null, null],
  ])('reads %s', (text, drawn, nominal) => {
    expect(gain(drawn, nominal, 'ratio')).toBe(text);
  });
});
