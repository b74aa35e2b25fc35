import { describe, expect, it } from 'vitest';
import { fuseContinuousCurrentA, wireContinuousCurrentA, wireResistanceOhm } from '../../src/physics/wire.js';
import { unitOf } from '../../src/quantity/unit-table.js';
import { celsiusK, significant } from './units.js';

const awgAreaM2 = unitOf('AWG', 'wire-size').toSi;
const awgDiameterM = (gauge: number) => Math.sqrt((4 * awgAreaM2(gauge)) / Math.PI);

describe('copper wire by gauge (ASTM B258 formula; published tables agree within 0.05 %)', () => {
  it.each([
    [18, 20.948],
    [22, 52.962],
    [26, 133.904],
    [30, 338.55],
  ])('AWG %s has %s mΩ per metre at 20 °C', (gauge, milliohm) => {
    const computed = 1000 * wireResistanceOhm(1, awgAreaM2(gauge));
    expect(significant(computed, milliohm < 100 ? 5 : 6)).toBe(milliohm);
  });

  it('AWG 22 is 0.6438 mm thick', () => {
    expect(significant(1000 * awgDiameterM(22), 4)).toBe(0.6438);
  });

  it('AWG 36 and 4/0, which define the sizes, are 0.0050 and 0.4600 in', () => {
    expect(awgDiameterM(36) / 0.0254).toBeCloseTo(0.005, 12);
    expect(awgDiameterM(-3) / 0.0254).toBeCloseTo(0.46, 12);
  });
});

describe('a pair of wires (closed form)', () => {
  it('of 1.2 m of AWG 22 at 3 A and 60 °C loses 0.44127 V', () => {
    const lossV = 3 * wireResistanceOhm(2 * 1.2, awgAreaM2(22), celsiusK(60));
    expect(significant(lossV, 5)).toBe(0.44127);
  });
});

describe('the current a wire is trusted with (chassis-wiring tables in common use, from memory)', () => {
  it.each([
    [10, 55],
    [12, 41],
    [14, 32],
    [16, 22],
    [18, 16],
    [20, 11],
    [22, 7],
    [24, 3.5],
    [26, 2.2],
    [28, 1.4],
    [30, 0.86],
  ])('AWG %s stays under the %s A of the tables, but over a third of it', (gauge, tableA) => {
    const trusted = wireContinuousCurrentA(awgAreaM2(gauge));
    expect(trusted).toBeLessThanOrEqual(1.01 * tableA);
    expect(trusted).toBeGreaterThan(tableA / 3);
  });
});

describe('a fuse (common guidance of fuse makers)', () => {
  it('carries 75 % of its rating for ever at 25 °C', () => {
    expect(fuseContinuousCurrentA(10)).toBe(7.5);
  });
});
