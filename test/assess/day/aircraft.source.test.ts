import { describe, expect, it } from 'vitest';
import { aircraftLine } from '../../../src/assess/day/aircraft.js';
import { plainPack } from '../../simulate/plain-study.js';

/** IATA guidance for passengers, reissued every year: 100 Wh without approval, 101–160 Wh with it, none above. */
describe('a pack against the lines for passenger aircraft', () => {
  const of = (seriesCount: number, capacityAh: number) =>
    aircraftLine(plainPack('lipo', { seriesCount, capacityC: capacityAh * 3600 }));

  it('four cells of 5.0 Ah at 3.7 V are 74.0 Wh, free of approval', () => {
    const line = of(4, 5);
    expect(line.energyJ / 3600).toBeCloseTo(74, 12);
    expect(line.category).toBe('free');
    expect(line.text).toContain('74 Wh');
  });

  it.each([
    [3, 9, 99.9, 'free'],
    [3, 9.1, 101.01, 'approval'],
    [6, 7.2, 159.84, 'approval'],
    [6, 7.3, 162.06, 'forbidden'],
  ])('%d cells of %d Ah, %d Wh: %s', (cells, ampereHours, wattHours, category) => {
    const line = of(cells, ampereHours);
    expect(line.energyJ / 3600).toBeCloseTo(wattHours, 9);
    expect(line.category).toBe(category);
  });

  it('nickel metal hydride is another matter', () => {
    expect(aircraftLine(plainPack('nimh')).category).toBe('other');
  });
});
