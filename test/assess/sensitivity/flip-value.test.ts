import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flipValue } from '../../../src/assess/sensitivity/flip-value.js';

const range = { low: 0.2, high: 8 };

/** The function, and how often it was asked. */
function counted(of: (value: number) => number): { lead: (value: number) => number; count: () => number } {
  let count = 0;
  const lead = (value: number) => {
    count++;
    return of(value);
  };
  return { lead, count: () => count };
}

describe('the value at which another candidate leads', () => {
  it('is where the lead passes through 0, on the far side of it', () => {
    const found = flipValue((value) => 1 - value / 3, 1, range)!;
    expect(found.value).toBeCloseTo(3, 3);
    expect(found.leadScore).toBeLessThan(0);
    expect(found.bracket.low).toBeLessThanOrEqual(3);
    expect(found.bracket.high).toBe(found.value);
    expect(found).toMatchObject({ jumps: false, confirmed: true });
  });

  it('is found below nominal too, and for a lead that is negative at nominal', () => {
    expect(flipValue((value) => value - 0.5, 1, range)!.value).toBeCloseTo(0.5, 3);
    const behind = flipValue((value) => value - 3, 1, range)!;
    expect(behind.value).toBeCloseTo(3, 3);
    expect(behind.leadScore).toBeGreaterThan(0);
    expect(behind.confirmed).toBe(true);
  });

  it('is the nearest of several, in steps of the range: cos changes at π/2, 3π/2 and 5π/2', () => {
    expect(flipValue(Math.cos, 1, range)!.value).toBeCloseTo(Math.PI / 2, 3);
    expect(flipValue(Math.cos, 5.5, { low: 3, high: 8.5 })!.value).toBeCloseTo((3 * Math.PI) / 2, 3);
    const both = (value: number) => (value - 3) * (value - 5.9);
    expect(flipValue(both, 4.5, { low: 2.8, high: 8 })!.value).toBeCloseTo(5.9, 3);
    expect(flipValue(both, 4.4, { low: 2.8, high: 8 })!.value).toBeCloseTo(3, 3);
  });

  it('is nearest by ratio where the range is taken in the logarithm', () => {
    const both = (value: number) => (value - 50) * (value - 180) * -1;
    expect(flipValue(both, 100, { low: 10, high: 1000 })!.value).toBeCloseTo(180, 1);
    expect(flipValue(both, 90, { low: 40, high: 200 })!.value).toBeCloseTo(50, 1);
  });

  it('is found where a limit begins to fail, and called a jump', () => {
    const found = flipValue((value) => (value < 3.3 ? 0.2 : -2), 1, range)!;
    expect(found.value).toBeGreaterThanOrEqual(3.3);
    expect(found.bracket.low).toBeLessThan(3.3);
    expect(found.value - found.bracket.low).toBeLessThan(1e-3);
    expect(found).toMatchObject({ jumps: true, confirmed: true, leadScore: -2 });
  });

  it('does not exist where the lead stays, or where there is none', () => {
    expect(flipValue(() => 1, 1, range)).toBeNull();
    expect(flipValue((value) => 9 - value, 1, range)).toBeNull();
    expect(flipValue(() => Number.NaN, 1, range)).toBeNull();
    expect(flipValue((value) => (value > 2 ? Number.NaN : 1), 1, range)).toBeNull();
    expect(flipValue((value) => value, 1, { low: 1, high: 1 })).toBeNull();
  });

  it('is nominal itself where two are level there', () => {
    expect(flipValue((value) => value - 1, 1, range)).toMatchObject({ value: 1, confirmed: true });
  });

  it('works from a nominal value at the edge of the range or outside it', () => {
    expect(flipValue((value) => 1.5 - value, 1, { low: 1, high: 2 })!.value).toBeCloseTo(1.5, 3);
    expect(flipValue((value) => 1.5 - value, 0.8, { low: 1, high: 2 })!.value).toBeCloseTo(1.5, 3);
    expect(flipValue((value) => value + 1, 0, { low: -3, high: 2 })!.value).toBeCloseTo(-1, 3);
  });

  it('takes at most some fifty evaluations, jumps and crooked curves included', () => {
    const inside = fc.double({ min: 1.01, max: 7.9, noNaN: true });
    fc.assert(
      fc.property(
        inside,
        fc.integer({ min: 1, max: 7 }),
        fc.double({ min: 1e-4, max: 3, noNaN: true }),
        (at, power, drop) => {
          const curves = [
            (value: number) => Math.sign(at - value) * Math.abs(at - value) ** power,
            (value: number) => (value < at ? drop : -2),
            (value: number) => (value < at ? 2 : -drop),
          ];
          for (const curve of curves) {
            const { lead, count } = counted(curve);
            const found = flipValue(lead, 1, range)!;
            expect(Math.abs(found.value / at - 1)).toBeLessThan(1e-3);
            expect(found.confirmed).toBe(true);
            expect(count()).toBeLessThanOrEqual(54);
          }
        },
      ),
    );
  });
});
