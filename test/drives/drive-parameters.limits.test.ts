import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { driveParameters } from '../../src/drives/drive-parameters.js';
import { driveTypes } from '../../src/drives/registry.js';
import type { DriveSheet } from '../../src/drives/sheet.js';
import { sheetFindings } from '../../src/drives/sheet-findings.js';
import { plainSheet, plainTypical } from '../simulate/plain-study.js';

const type = driveTypes['worm-gearmotor'];
const typical = plainTypical['worm-gearmotor'];
const parametersOf = (sheet: DriveSheet) => driveParameters(type, sheet, typical, sheet.ratedVoltageV);
const codesOf = (sheet: DriveSheet) =>
  sheetFindings(type, sheet, typical, parametersOf(sheet), sheet.ratedVoltageV).map(({ code }) => code);

/*
 * By hand, from V = I·R + K·w and T = η·K·(I − I_0) at 12 V, 2 rad/s and 0.2 A free, 3 A and 3.92 N·m at stall:
 * R = 12/3 = 4 Ω, K = (12 − 0.2·4)/2 = 5.6 V·s/rad, K·(I_s − I_0) = 5.6·2.8 = 15.68 N·m, η = 3.92/15.68 = 0.25.
 */
const worm = plainSheet({
  ratedVoltageV: 12,
  noLoadSpeed: 2,
  noLoadCurrentA: 0.2,
  stallCurrentA: 3,
  stallEffort: 3.92,
});

describe('a gear efficiency that somebody states', () => {
  it('does not make a drive push harder than its listing', () => {
    const drive = parametersOf({ ...worm, gearEfficiency: 0.6 });
    expect(drive.stallEffort).toBeCloseTo(3.92, 9);
    expect(drive.forwardEfficiency).toBeCloseTo(0.25, 9);
  });

  it('is what backdriving follows even so: 0.6 is a mesh of 2/3 behind spur stages of 0.9', () => {
    // Loss 1/(2/3) − 1 = 0.5, so 1 − 0.5 through the mesh, times 2 − 1/0.9 through the spur stages.
    const drive = parametersOf({ ...worm, gearEfficiency: 0.6 });
    expect(drive.backwardEfficiency).toBeCloseTo(0.5 * (2 - 1 / 0.9), 9);
  });

  it('lowers the stall figure where the listing implies more: 0.15 · 15.68 N·m', () => {
    expect(parametersOf({ ...worm, gearEfficiency: 0.15 }).stallEffort).toBeCloseTo(2.352, 9);
  });

  it('gives the stall current where that is blank, and leaves the stall figure alone', () => {
    // 3.92 · 2 / (0.5 · 12 · (1 − 0.08)²)
    const blank = { ...worm, noLoadCurrentA: null, stallCurrentA: null, gearEfficiency: 0.5 };
    const drive = parametersOf(blank);
    expect(drive.stallCurrentA).toBeCloseTo(7.84 / (6 * 0.8464), 9);
    expect(drive.stallEffort).toBeCloseTo(3.92, 9);
    expect(codesOf(blank)).not.toContain('stated-efficiency-disagrees');
  });

  it.each([
    [0.32, true],
    [0.31, false],
    [0.19, false],
    [0.18, true],
  ])('of %d beside an implied 0.25 is a finding: %s', (gearEfficiency, found) => {
    expect(codesOf({ ...worm, gearEfficiency }).includes('stated-efficiency-disagrees')).toBe(found);
  });
});

describe('figures that cross, as draws and rows between two voltages can', () => {
  const loaded = { stallEffort: null, stallCurrentA: null, ratedEffort: 1 };

  it('are computed with a no-load current of nine tenths of the loaded one, and that is a finding', () => {
    const crossed = { ...worm, noLoadCurrentA: 3.3 };
    expect(parametersOf(crossed).noLoadCurrentA).toBeCloseTo(2.7, 9);
    expect(codesOf(crossed)).toContain('nearly-crossed');
    expect(codesOf(worm)).not.toContain('nearly-crossed');
  });

  it('are computed with a rated speed of 0.95 of the no-load speed: twenty times the rated effort at stall', () => {
    const crossed = { ...worm, ...loaded, ratedSpeed: 2.1, ratedCurrentA: 1 };
    expect(parametersOf(crossed).listedStallEffort).toBeCloseTo(20, 9);
    expect(codesOf(crossed)).toContain('nearly-crossed');
  });

  it('never give a negative resistance or constant, nor more effort than listed, whatever crosses', () => {
    const figure = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
    const figures = fc.record({
      noLoadSpeed: figure(0.5, 5),
      noLoadCurrentA: fc.option(figure(0, 6)),
      stallCurrentA: fc.option(figure(0.05, 6)),
      ratedSpeed: fc.option(figure(0.1, 6)),
      ratedCurrentA: fc.option(figure(0.05, 6)),
      ratedEffort: fc.option(figure(0.1, 30)),
      stallEffort: figure(0.1, 30),
      gearEfficiency: fc.option(figure(0.01, 1)),
    });
    fc.assert(
      fc.property(figures, fc.boolean(), (drawn, blankStall) => {
        const hasPoint = drawn.ratedSpeed !== null && drawn.ratedEffort !== null;
        const stallEffort = blankStall && hasPoint ? null : drawn.stallEffort;
        const drive = parametersOf({ ...worm, ...drawn, stallEffort });
        expect(drive.resistanceOhm).toBeGreaterThan(0);
        expect(drive.speedConstant).toBeGreaterThan(0);
        expect(drive.stallCurrentA).toBeGreaterThan(drive.noLoadCurrentA);
        expect(drive.stallEffort).toBeGreaterThan(0);
        expect(drive.stallEffort).toBeLessThanOrEqual(drive.listedStallEffort * (1 + 1e-9));
        for (const value of Object.values(drive))
          if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      }),
    );
  });
});
